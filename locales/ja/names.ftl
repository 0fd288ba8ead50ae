# モデルの語の名前。キーごとに「種類-キー」のメッセージがある。
#
# 見え方(quantity):名前、.short は文の中での短い呼び方、.over と .under は望む範囲を
# $amount だけ上回る・下回るときの言い方。手の加減(decision):名前、.over と .under は
# いつもとの差 $amount の言い方。

language-name = 日本語

## 外れの言い方

miss-high = { $amount }高すぎる
miss-low = { $amount }低すぎる
miss-long = { $amount }長すぎる
miss-short = { $amount }短すぎる
miss-wide = { $amount }広すぎる
miss-narrow = { $amount }狭すぎる
miss-much = { $amount }多すぎる
miss-little = { $amount }足りない
miss-left = { $amount }左へ寄りすぎる
miss-right = { $amount }右へ寄りすぎる

## 見え方

quantity-hem_back = 後ろの裾の高さ（床から）
    .short = 後ろの裾
    .over = { miss-high }
    .under = { miss-low }
quantity-uwamae_corner = 上前の褄先の高さ（床から）
    .short = 上前の褄先
    .over = { miss-high }
    .under = { miss-low }
quantity-shitamae_above_uwamae = 下前の褄先の高さ（上前の褄先から）
    .short = 下前の褄先
    .over = { miss-high }
    .under = { miss-low }
quantity-hem_taper = 裾すぼまり（腰回りと裾回りの差）
    .short = 裾すぼまり
    .over = { miss-much }
    .under = { miss-little }
quantity-hem_loop = 裾一周の長さ
    .short = 裾一周
    .over = { miss-wide }
    .under = { miss-narrow }
quantity-front_cover = 上前のかぶり（上前の端が右の脇線の手前にある分）
    .short = 上前の端（脇線から）
    .over = { $amount }手前すぎる
    .under = { $amount }後ろへ回りすぎる
quantity-inner_cover = 下前のかぶり（前中心を越える分）
    .short = 下前のかぶり
    .over = { $amount }回りすぎる
    .under = { $amount }足りない
quantity-wrap_ease = 上前の端が右の脇縫いを越える分
    .short = 上前の端の脇縫い越し
    .over = { miss-much }
    .under = { $amount }足りない
quantity-back_seam_hip = 背縫いのずれ（腰、左＋ 右−）
    .short = 腰の背縫い
    .over = { miss-left }
    .under = { miss-right }
quantity-back_seam_top = 背縫いのずれ（おはしょりの上、左＋ 右−）
    .short = おはしょりの上の背縫い
    .over = { miss-left }
    .under = { miss-right }
quantity-back_seam_bend = 背縫いの曲がり（腰と背の差、左＋ 右−）
    .short = 背縫いの曲がり
    .over = 腰で{ $amount }左へ寄りすぎる
    .under = 腰で{ $amount }右へ寄りすぎる
quantity-koshihimo_over_hip_bone = 腰紐の高さ（腰骨から）
    .short = 腰紐
    .over = { miss-high }
    .under = { miss-low }
quantity-koshihimo_slope = 腰紐の前下がり
    .short = 腰紐の前下がり
    .over = { $amount }きつすぎる
    .under = { $amount }足りない
quantity-collar_end_clearance = 腰紐から衿先まで
    .short = 腰紐から見た衿先
    .over = { miss-low }
    .under = { miss-high }
quantity-collar_end_visible = おはしょりの下に見える衿先
    .short = おはしょりの下の衿先
    .over = { miss-much }
    .under = { miss-little }
quantity-fold_front = おはしょり（前）
    .short = 前のおはしょり
    .over = { miss-long }
    .under = { miss-short }
quantity-fold_right = おはしょり（右脇）
    .short = 右脇のおはしょり
    .over = { miss-long }
    .under = { miss-short }
quantity-fold_back = おはしょり（後ろ）
    .short = 後ろのおはしょり
    .over = { miss-long }
    .under = { miss-short }
quantity-fold_slant = おはしょりの傾き（右脇と前の差）
    .short = おはしょりの右端
    .over = { miss-long }
    .under = { miss-short }
quantity-cloth_front = 腰紐から上の余り（前）
    .short = 前の余り
    .over = { miss-much }
    .under = { miss-little }
quantity-cloth_right = 腰紐から上の余り（右脇）
    .short = 右脇の余り
    .over = { miss-much }
    .under = { miss-little }
quantity-cloth_back = 腰紐から上の余り（後ろ）
    .short = 後ろの余り
    .over = { miss-much }
    .under = { miss-little }
quantity-bulk_front = 帯の下に上げた布（前）
    .short = 前の帯下の布
    .over = { miss-much }
    .under = { miss-little }
quantity-bulk_right = 帯の下に上げた布（右脇）
    .short = 右脇の帯下の布
    .over = { miss-much }
    .under = { miss-little }
quantity-bulk_back = 帯の下に上げた布（後ろ）
    .short = 後ろの帯下の布
    .over = { miss-much }
    .under = { miss-little }
quantity-nape_drop = 衣紋の抜き
    .short = 衣紋の抜き
    .over = { $amount }深すぎる
    .under = { $amount }浅すぎる
quantity-ridge_setback = 着物の肩山が肩より後ろにある分
    .short = 肩山
    .over = { $amount }後ろすぎる
    .under = { $amount }前すぎる
quantity-juban_crossing = 長襦袢の衿合わせ（喉のくぼみから下）
    .short = 長襦袢の衿合わせ
    .over = { miss-low }
    .under = { miss-high }
quantity-juban_show = 半衿の見え幅（いちばん広い所）
    .short = 半衿
    .over = { miss-wide }
    .under = { miss-narrow }
quantity-juban_hold = 長襦袢の衿の重なり（紐の上）
    .short = 長襦袢の衿の重なり
    .over = { miss-much }
    .under = { miss-little }
quantity-kimono_hold = 着物の衿の重なり（紐の上）
    .short = 着物の衿の重なり
    .over = { miss-much }
    .under = { miss-little }
quantity-obi_over_hip_bone = 帯下線の高さ（前、腰骨から）
    .short = 帯下線
    .over = { miss-high }
    .under = { miss-low }
quantity-trunk_step = 胴と腰の差（補整の上から）
    .short = 胴と腰の差
    .over = { $amount }大きすぎる
    .under = { $amount }小さすぎる
quantity-sleeve_short = 手首の骨から袖口まで
    .short = 裄
    .over = { miss-short }
    .under = { miss-long }
quantity-drum_height = お太鼓の高さ
    .short = お太鼓
    .over = { $amount }大きすぎる
    .under = { $amount }小さすぎる
quantity-tare_length = たれの長さ
    .short = たれ
    .over = { miss-long }
    .under = { miss-short }
quantity-obiage_show = 帯揚げの見え幅
    .short = 帯揚げ
    .over = { miss-wide }
    .under = { miss-narrow }

## 手の加減

decision-hem_height = 後ろの裾の高さ（床から）
    .over = 裾をいつもより{ $amount }高く
    .under = 裾をいつもより{ $amount }低く
decision-uwamae_raise = 上前の褄の上げ
    .over = 上前の褄を{ $amount }多く上げ
    .under = 上前の褄の上げを{ $amount }控え
decision-shitamae_raise = 下前の褄の上げ
    .over = 下前の褄を{ $amount }多く上げ
    .under = 下前の褄の上げを{ $amount }控え
decision-shitamae_fold_back = 下前の端の折り返し
    .over = 下前の端を{ $amount }折り返し
    .under = 下前の端の折り返しを{ $amount }控え
decision-back_seam_hip = 腰の背縫いの位置（左＋ 右−）
    .over = 背縫いを{ $amount }左へ
    .under = 背縫いを{ $amount }右へ
decision-back_seam_top = おはしょりの上の背縫いの位置（左＋ 右−）
    .over = おはしょりの上の背縫いを{ $amount }左へ
    .under = おはしょりの上の背縫いを{ $amount }右へ
decision-koshihimo_back = 腰紐の高さ（後ろ）
    .over = 後ろの腰紐を{ $amount }高く
    .under = 後ろの腰紐を{ $amount }低く
decision-koshihimo_front = 腰紐の高さ（前）
    .over = 前の腰紐を{ $amount }高く
    .under = 前の腰紐を{ $amount }低く
decision-take_up_front = 胸紐の下で上げる分（前）
    .over = 前を{ $amount }上げ
    .under = 前の上げを{ $amount }控え
decision-take_up_right = 胸紐の下で上げる分（右脇）
    .over = 右脇を{ $amount }上げ
    .under = 右脇の上げを{ $amount }控え
decision-take_up_back = 胸紐の下で上げる分（後ろ）
    .over = 後ろを{ $amount }上げ
    .under = 後ろの上げを{ $amount }控え
decision-nape_drop = 衣紋の抜き
    .over = 衣紋を{ $amount }深く抜き
    .under = 衣紋の抜きを{ $amount }控え
decision-juban_overlap = 長襦袢の衿が中心を越える分（胸紐の所）
    .over = 長襦袢の衿を{ $amount }深く合わせ
    .under = 長襦袢の衿を{ $amount }浅く合わせ
decision-kimono_overlap = 着物の衿が中心を越える分（胸紐の所）
    .over = 着物の衿を{ $amount }深く合わせ
    .under = 着物の衿を{ $amount }浅く合わせ
decision-obi_lower_edge = 帯下線の高さ（前）
    .over = 帯を{ $amount }高く
    .under = 帯を{ $amount }低く
decision-drum_height = お太鼓の高さ
    .over = お太鼓を{ $amount }大きく
    .under = お太鼓を{ $amount }小さく
decision-tare_length = たれの長さ
    .over = たれを{ $amount }長く
    .under = たれを{ $amount }短く
decision-obiage_show = 帯揚げの見え幅
    .over = 帯揚げを{ $amount }広く
    .under = 帯揚げを{ $amount }狭く
decision-waist_padding = 補整の厚み（胴）
    .over = 胴の補整を{ $amount }厚く
    .under = 胴の補整を{ $amount }薄く
decision-hip_padding = 補整の厚み（腰）
    .over = 腰の補整を{ $amount }厚く
    .under = 腰の補整を{ $amount }薄く

## 体:名前と測り方

sex-women = 女性
sex-men = 男性

measure-stature = 身長
    .how = 床から頭のてっぺんまで、素足で。
measure-back_neck_height = 首の後ろの付け根の高さ
    .how = 頭を前に倒すと出る首の付け根の骨まで、床から。
measure-side_neck_height = 首の横の付け根の高さ
    .how = 肩の線が首に当たる所まで、床から。
measure-shoulder_height = 肩先の高さ
    .how = 肩の骨の外の端まで、床から。
measure-bust_height = 胸の高さ
    .how = 乳頭まで、床から。
measure-under_bust_height = 胸下の高さ
    .how = 乳房の下の端まで、床から。
measure-waist_height = ウエストの高さ
    .how = 一番下の肋骨と腰骨の間の細い所まで、床から。
measure-navel_height = へその高さ
    .how = へそまで、床から。
measure-hip_bone_height = 腰骨の高さ
    .how = 前に出ている腰骨の先まで、床から。
measure-hip_height = ヒップの高さ
    .how = お尻の一番張った所まで、床から。
measure-crotch_height = 股下
    .how = 股まで、床から。
measure-knee_height = 膝の高さ
    .how = 膝の皿の真ん中まで、床から。
measure-ankle_height = くるぶしの高さ
    .how = 外くるぶしまで、床から。
measure-neck_base_girth = 首の付け根回り
    .how = 首の後ろと横の付け根を通ってぐるりと。
measure-bust_girth = バスト
    .how = 乳頭を通って水平に一周。
measure-under_bust_girth = アンダーバスト
    .how = 乳房のすぐ下を一周。
measure-waist_girth = ウエスト
    .how = 胴の細い所を一周。
measure-navel_girth = 腹囲
    .how = へその高さで一周。
measure-hip_girth = ヒップ
    .how = お尻の一番張った所を水平に一周。
measure-fullest_girth = 腰回り（一番太い所）
    .how = 腹から腿までで一番太い所を一周。
measure-shoulder_breadth = 肩幅
    .how = 肩先から肩先までまっすぐ。
measure-spine_to_wrist = 体の裄
    .how = 腕を45度下げ、首の後ろの付け根から肩を通って手首の骨まで。
measure-hand_length = 手の長さ
    .how = 手首のしわから中指の先まで。
measure-hand_breadth = 手の幅
    .how = 親指を除いた指の付け根の幅。
measure-index_finger_length = 人差し指の長さ
    .how = 付け根のしわから先まで。
measure-finger_breadth = 指1本の幅
    .how = 4本揃えた指の第二関節の幅を4で割る。

## 着物:名前と測り方

kind-nagagi = 着物（長着）
kind-yukata = 浴衣
cloth-soft = やわらかもの（縮緬、綸子、多くのポリエステル）
cloth-stiff = かたもの（紬、麻、ウール）
cloth-cotton = 木綿
mitake_from-shoulder = 肩から
mitake_from-back_seam = 背から

part-mitake = 身丈
    .how = 裾まで、肩山から、または衿付けから背縫いに沿って。
part-yuki = 裄
    .how = 背縫いから肩に沿って袖口まで。
part-katahaba = 肩幅
    .how = 背縫いから袖付けまで。
part-sodehaba = 袖幅
    .how = 袖付けから袖口まで。
part-sodetake = 袖丈
    .how = 肩山から袖の下の端まで。
part-sodeguchi = 袖口
    .how = 肩山から袖口止まりまで。
part-sodetsuke = 袖付け
    .how = 肩山から袖付け止まりまで。
part-furi = 振り
    .how = 袖付け止まりから下のあいた所。
part-miyatsukuchi = 身八つ口
    .how = 袖の下の脇のあき。
part-ushirohaba = 後ろ幅
    .how = 腰の所で背縫いから脇縫いまで。
part-maehaba = 前幅
    .how = 腰の所で脇縫いから衽付けまで。
part-dakihaba = 抱き幅
    .how = 身八つ口止まりの所で脇から衿付けまで。
part-okumihaba = 衽幅
    .how = 裾での衽の幅。
part-aizumahaba = 合褄幅
    .how = 衿先の所での衽の幅。
part-erishita = 衿下（褄下）
    .how = 前の端に沿って裾から衿先まで。
part-okumisagari = 衽下がり
    .how = 肩山から剣先まで。
part-erikata_aki = 衿肩あき
    .how = 背縫いから衿肩あきの端まで。
part-kurikoshi = 繰り越し
    .how = 衿肩あきが肩山より後ろにある分。
part-tsukekomi = 付け込み
    .how = 背縫いで衿を深く付ける分。
part-erihaba = 衿幅
    .how = 背での仕立て上がりの衿の幅。

## 場

occasion-indoors = 室内（履物なし）
occasion-formal = 礼装
occasion-stage = 舞台
occasion-everyday = 普段
occasion-practice = 家での稽古

## 数の出どころと単位

origin-taped = 採寸
origin-completed = 推定
origin-photo = 写真から
origin-customary = 慣習
origin-learned = これまでの着付けから
unit-centimetre = センチ
unit-kujira_shaku = 鯨尺
unit-kane_shaku = 曲尺

## 体の目印と手

landmark-ankle = くるぶし
landmark-hip_bone = 腰骨
landmark-navel = へそ
landmark-waist = ウエスト
landmark-under_bust = 胸下
hand-finger = 指
hand-index_finger = 人差し指
hand-fist = 軽く握ったこぶし

## 見立てときまり

standard-customary = 慣習
verdict-falls_right = きれいに納まる
verdict-with_care = 加減すれば着られる
verdict-shows = 難が見える
verdict-leave_it = 着ないほうがよい

## 着物の寸法を補うきまり

rule-yuki-sum = 裄 = 肩幅 + 袖幅
rule-yuki-height = 裄 = 身長 × 0.4 + 2 cm、身長は身丈とみなす
rule-shoulder-rest = 肩幅 = 裄 − 袖幅
rule-sleeve-rest = 袖幅 = 裄 − 肩幅
rule-sleeve-split = 袖幅 = 裄 ÷ 2 + 2分7厘半
rule-sleeve-from-shoulder = 袖幅 = 肩幅 + 5分半
rule-shoulder-from-sleeve = 肩幅 = 袖幅 − 5分半
rule-sodetake-standard = 袖丈 = 1尺3寸
rule-sodetake-sum = 袖丈 = 袖付け + 振り
rule-sodeguchi-standard = 袖口 = 6寸
rule-sodetsuke-height = 袖付け = 身長160 cm未満で5寸5分、以上で6寸
rule-sodetsuke-rest = 袖付け = 袖丈 − 振り
rule-furi-rest = 振り = 袖丈 − 袖付け
rule-miyatsukuchi-standard = 身八つ口 = 4寸
rule-ushiro-of-mae = 後ろ幅 = ヒップ ÷ 4 + 6 cm、ヒップは前幅の表から
rule-mae-of-ushiro = 前幅はヒップの表から、ヒップ = 4 ×（後ろ幅 − 6 cm）
rule-daki-of-mae = 抱き幅 = 前幅 − 4分
rule-okumi-hip = 衽幅 = 4寸、ヒップ100 cmから4寸1分、105 cmから4寸2分
rule-aizuma-of-okumi = 合褄幅 = 衽幅 − 2分
rule-aizuma-equal = 合褄幅 = 衽幅（ヒップ100 cmから）
rule-okumi-of-aizuma = 衽幅 = 合褄幅（きまりより広いとき）
rule-erishita-half = 衿下 = 身丈 ÷ 2、2尺2寸まで
rule-okumisagari-height = 衽下がり = 6寸、身長150 cmまでは5寸5分
rule-erikata-aki-standard = 衿肩あき = 2寸3分
rule-kurikoshi-standard = 繰り越し = 7分（裁ち）
rule-tsukekomi-standard = 付け込み = 4分、3分から5分の中
rule-erihaba-wide = 衿幅 = 3寸（広衿、折って着る）
rule-erihaba-narrow = 衿幅 = 背で1寸5分（ばち衿）
