# 着付けの点検で言うこと:難、原因、迷い、直し、助言、送る文。左右は着る人から見て。

## 左前（右が上）:何よりも先に言う

check-way = { $views }：右が上に重なっています。鏡に映した写真か、左前（亡くなった人の着方）に着ているか、どちらかです。何よりも先に確かめてください。以下はすべて鏡の写真として読みました。
check-way-mirrored = { $views }：鏡の写真とのことですが、右が上です。鏡の写真ではないか、左前（亡くなった人の着方）に着ているかです。何よりも先に確かめてください。以下は鏡の写真ではないものとして読みました。
check-way-title = どちらが上かを確かめる
check-way-why = 写真では右が上に重なっています。鏡に映した写真でもそう見えますが、そうでなければ亡くなった人の着方です。
check-way-why-mirrored = 鏡の写真とのことですが、右が上に重なっています。鏡の写真でなければ問題ありません。鏡の写真なら、亡くなった人の着方です。
check-way-practise = 巻くたびに「着る人の左が上」と声に出します。右手が懐に入れば正しい向きです。

## 見出し

check-h-way = まず初めに
check-h-advice = 直すこと（この順に）
check-h-good = よくできた所
check-h-faults = 難
check-h-perhaps = 難かもしれない所
check-h-causes = わけ：原因と目で見た所（着付けの順）
check-h-doubts = 見分けのつかないこと
check-h-correction = いちばん少ない直し
check-h-skews = 左右の違い
check-h-differences = 案と違うが難ではない所
check-h-unseen = 見えなかった所
check-h-hidden = 見えないまま違っているかもしれない所
check-h-doubtful = 見直したい印
check-h-cautions = 注意

## 難:値、幅、望み。$line は望みの一行。

check-finding-named = { $name }。{ $line }
check-perhaps = { $line }。言い切れるほど確かには読めていません
check-difference-more = { $what }：{ $value }（{ $interval }）、案より{ $amount }大きい
check-difference-less = { $what }：{ $value }（{ $interval }）、案より{ $amount }小さい
check-difference-left = { $what }：{ $value }（{ $interval }）、案より{ $amount }左
check-difference-right = { $what }：{ $value }（{ $interval }）、案より{ $amount }右
check-no-faults = 読み取れた所は、読める限りすべて望みの範囲に納まっています。
check-nothing-read = 読んだ写真はありません。目で見たことだけを述べます。

## 原因:案からどれだけ離れ、何の元か。done-…：したこと。

check-cause = { $deed }（{ $interval }）、{ $sure }
check-cause-explains = { $cause }：{ $shares }
check-share = 「{ $fault }」の{ $percent } %はこれによる
check-share-more = 「{ $fault }」はすべてこれによる（ほかのもので一部が打ち消されている）
check-sure-certain = ほぼ確実
check-sure-very = かなり確か
check-sure-likely = たぶん
check-sure-perhaps = もしかすると
check-fault-short = { $what }が{ $miss }
check-unexplained = 「{ $fault }」はどの原因からも来ていません。体、着物、または読み取りによるものです
check-no-causes = これという一つの手は見つかりません。手、体、着物が合わさったものです。

## 迷い

check-doubt-instead = 「{ $told }」ではなく「{ $other }」かもしれません（{ $odds }）。
check-doubt-besides = そのうえ「{ $other }」かもしれません（{ $odds }）。
check-doubt-without = 「{ $told }」は違うかもしれません（{ $odds }）。
check-doubt-single = 「{ $other }」かもしれません（手、体、着物が合わさったのに比べて{ $odds }）。
check-odds-same = 同じくらいありうる
check-odds-half = 半分くらいありうる
check-odds-fifth = 五分の一くらいありうる
check-odds-tenth = 十分の一くらいありうる
check-tell-photo = 決めるには、{ $views }の写真を撮るか印を置きます。{ $what }が{ $told }なら今の見立て、{ $other }ならもう一方です。
check-tell-felt = 決めるには、布の上から手で探ります。{ $what }が{ $told }なら今の見立て、{ $other }ならもう一方です。
check-tell-opened = 決めるには、上から順にほどくときに見ます。{ $what }が{ $told }なら今の見立て、{ $other }ならもう一方です。
check-tell-none = これから見て決められるものはありません。
check-from-front = 正面から
check-from-back = 後ろから
check-from-right = 右から
check-from-left = 左から
check-sentences = { $first }{ $next }
check-or = { $first }または{ $next }

## 直し

check-change = { $do }：{ $from }から{ $to }へ
check-change-cures = { $change }（{ $faults }が直る）
check-left = { $fault }のは残ります。この人とこの着物ではここまでです
check-more = { $count ->
   *[other] あと{ $count }つありますが、まずここまで。
}

## 符号だけでは向きの分からない値

check-to-left = 左へ{ $amount }
check-to-right = 右へ{ $amount }
check-centred = 真ん中

## 左右の違い。$amount は単位付き、$line は skew- の一行。

check-skew-alike = 読み取れるほどの違いはない：{ $skews }。
check-skew-passes = { $line }（{ $interval }）：{ $most }までなら見過ごせる
check-skew-perhaps = { $line }（{ $interval }）：違いすぎかもしれない。{ $most }までなら見過ごせる
check-skew-fault = { $line }（{ $interval }）：違いすぎ。{ $most }までなら見過ごせる
skew-hem_slant = 裾の傾き
    .over = 裾は右が左より{ $amount }高い
    .under = 裾は左が右より{ $amount }高い
skew-fold_lean = おはしょりの傾き
    .over = おはしょりは右が左より{ $amount }高い
    .under = おはしょりは左が右より{ $amount }高い
skew-obi_slant = 帯の傾き
    .over = 帯は右が左より{ $amount }高い
    .under = 帯は左が右より{ $amount }高い
skew-crossing_off = 衿合わせの片寄り
    .over = 衿合わせは真ん中から{ $amount }左
    .under = 衿合わせは真ん中から{ $amount }右
skew-han_eri_difference = 半衿の左右
    .over = 半衿は左が{ $amount }多い
    .under = 半衿は右が{ $amount }多い
skew-nape_off = 衣紋の片寄り
    .over = 衣紋の真ん中は背骨から{ $amount }左
    .under = 衣紋の真ん中は背骨から{ $amount }右
skew-sleeve_difference = 袖の左右
    .over = 左の袖口は右より手首から{ $amount }遠い
    .under = 右の袖口は左より手首から{ $amount }遠い

## 見えなかった所

check-unseen = { $why }：{ $what }。
check-eye = { $what }：{ $why }
check-unseen-felt = 布に隠れているので、布の上から手で探る
check-unseen-opened = 布に隠れているので、上から順にほどくときに見る
check-unseen-covered = 布に隠れていた
check-unseen-view = { $view }なら見える
check-unseen-mark = 印「{ $mark }」を置いていない
check-hidden = 読み取れたものからは、次が違っていても分かりません：{ $decisions }。
check-doubtful = { $view }：「{ $mark }」がほかの印と合いません。置き所を見直してください。

## 助言

check-advice-why = わけ：{ $why }
check-advice-now = その場で：{ $how }
check-advice-next = 稽古：{ $how }
check-why-cures = { $faults }。
check-good = { $what }：{ $value }、望み{ $range }
check-nothing-to-change = 直す所はありません。
check-nothing-sure = 言い切れる直しはありません。
check-nothing-read-yet = まだ何も読んでおらず、目で見た所も選ばれていません。写真に印を付けるか、目で見た所を選んでください。
check-nothing-helps = 手の直しでは変わりません：{ $faults }は残ります。体と着物の寸法の限りです。別の着物、仕立て直し、補整のどれが助けになるかは着付け案に出ます。
check-nothing-skews = 左右が見過ごせるより違います：{ $skews }。これという直しは言えないので、両側を見比べてください。
check-nothing-good = 読み取れた所で、望みの範囲に納まったものはまだありません。稽古はそのためにあります。

## 案と違った手:done-…。文の中の名前:todo-…、.over と .under はすること、.practise は稽古

done-hem_height =
    .over = 裾が案より{ $amount }高い
    .under = 裾が案より{ $amount }低い
done-uwamae_raise =
    .over = 上前の褄を案より{ $amount }上げすぎ
    .under = 上前の褄の上げが案より{ $amount }足りない
done-shitamae_raise =
    .over = 下前の褄を案より{ $amount }上げすぎ
    .under = 下前の褄の上げが案より{ $amount }足りない
done-shitamae_fold_back =
    .over = 下前の折り返しが案より{ $amount }多い
    .under = 下前の折り返しが案より{ $amount }少ない
done-back_seam_hip =
    .over = 腰の背縫いが案より{ $amount }左
    .under = 腰の背縫いが案より{ $amount }右
done-back_seam_top =
    .over = おはしょりの上の背縫いが案より{ $amount }左
    .under = おはしょりの上の背縫いが案より{ $amount }右
done-koshihimo_back =
    .over = 後ろの腰紐が案より{ $amount }高い
    .under = 後ろの腰紐が案より{ $amount }低い
done-koshihimo_front =
    .over = 前の腰紐が案より{ $amount }高い
    .under = 前の腰紐が案より{ $amount }低い
done-take_up_front =
    .over = 胸紐の下で上げた分（前）が案より{ $amount }多い
    .under = 胸紐の下で上げた分（前）が案より{ $amount }少ない
done-take_up_right =
    .over = 胸紐の下で上げた分（右脇）が案より{ $amount }多い
    .under = 胸紐の下で上げた分（右脇）が案より{ $amount }少ない
done-take_up_back =
    .over = 胸紐の下で上げた分（後ろ）が案より{ $amount }多い
    .under = 胸紐の下で上げた分（後ろ）が案より{ $amount }少ない
done-nape_drop =
    .over = 衣紋の抜きが案より{ $amount }深い
    .under = 衣紋の抜きが案より{ $amount }浅い
done-juban_overlap =
    .over = 長襦袢の衿の合わせが案より{ $amount }深い
    .under = 長襦袢の衿の合わせが案より{ $amount }浅い
done-kimono_overlap =
    .over = 着物の衿の合わせが案より{ $amount }深い
    .under = 着物の衿の合わせが案より{ $amount }浅い
done-obi_lower_edge =
    .over = 帯下線が案より{ $amount }高い
    .under = 帯下線が案より{ $amount }低い
done-drum_height =
    .over = お太鼓が案より{ $amount }大きい
    .under = お太鼓が案より{ $amount }小さい
done-tare_length =
    .over = たれが案より{ $amount }長い
    .under = たれが案より{ $amount }短い
done-obiage_show =
    .over = 帯揚げの見え幅が案より{ $amount }広い
    .under = 帯揚げの見え幅が案より{ $amount }狭い
done-waist_padding =
    .over = 胴の補整が案より{ $amount }厚い
    .under = 胴の補整が案より{ $amount }薄い
done-hip_padding =
    .over = 腰の補整が案より{ $amount }厚い
    .under = 腰の補整が案より{ $amount }薄い

todo-hem_height = 裾の高さ
    .over = 裾を{ $amount }高く決める
    .under = 裾を{ $amount }低く決める
    .practise = 巻く前に止まって後ろから裾を見ます。紐を締めてもう一度見て、上がった分が自分の見込みになります。二度の差が1 cmに納まるまで五回。
todo-uwamae_raise = 上前の褄の上げ
    .over = 上前の褄を{ $amount }多く上げる
    .under = 上前の褄の上げを{ $amount }減らす
    .practise = 右の腰まで平らに運んで止まり、そこで褄を上げて量を声に出し、締めてから測ります。先へ進まずに巻くだけを十回。
todo-shitamae_raise = 下前の褄の上げ
    .over = 下前の褄を{ $amount }多く上げる
    .under = 下前の褄の上げを{ $amount }減らす
    .practise = 手が左の腰骨に届いてから褄を上げ、上前を開いて左右の褄先を比べます。上前を開けたまま十回。
todo-shitamae_fold_back = 下前の折り返し
    .over = 下前の端を{ $amount }多く折り返す
    .under = 下前の端の折り返しを{ $amount }減らす
    .practise = 下前を一度渡し、終わる所に指を置き、開いて指の所まで上から下まで同じに折ります。
todo-back_seam_hip = 腰の背縫い
    .over = 腰の背縫いを{ $amount }左へ置く
    .under = 腰の背縫いを{ $amount }右へ置く
    .practise = 片手で腰の背縫いを押さえたまま、もう片手で上前を決め、巻く前に鏡で見ます。
todo-back_seam_top = おはしょりの上の背縫い
    .over = おはしょりの上の背縫いを{ $amount }左へ置く
    .under = おはしょりの上の背縫いを{ $amount }右へ置く
    .practise = 衿を合わせたら両の身八つ口を持って同じ力で引き、胸紐の前に背縫いを背骨に合わせます。
todo-koshihimo_back = 後ろの腰紐
    .over = 後ろの腰紐を{ $amount }高く締める
    .under = 後ろの腰紐を{ $amount }低く締める
    .practise = 紐を取る前に指で体の高さを探し、そこへ当てて、ずり上げずに交差させます。仕上がりを気にしない着物で十回。
todo-koshihimo_front = 前の腰紐
    .over = 前の腰紐を{ $amount }高く締める
    .under = 前の腰紐を{ $amount }低く締める
    .practise = 紐の真ん中を右の腰骨に当て、後ろでずり上げずに交差させて前へ回し、結ぶ前に左右の高さを指で比べます。
todo-take_up_front = 胸紐の下で上げる分（前）
    .over = 胸紐の下で前を{ $amount }多く上げる
    .under = 胸紐の下で前を上げる分を{ $amount }減らす
    .practise = 胸の下で布をつまみ、おはしょりの下の線を見ながら加減し、決まってから紐を掛けます。指ではなく線を見ます。
todo-take_up_right = 胸紐の下で上げる分（右脇）
    .over = 胸紐の下で右脇を{ $amount }多く上げる
    .under = 胸紐の下で右脇を上げる分を{ $amount }減らす
    .practise = 右脇の縫い目の所でつまみ、おはしょりの線が真ん中まで水平になったら、紐が通るまで押さえます。
todo-take_up_back = 胸紐の下で上げる分（後ろ）
    .over = 胸紐の下で後ろを{ $amount }多く上げる
    .under = 胸紐の下で後ろを上げる分を{ $amount }減らす
    .practise = まず後ろを腰紐まで下ろして整え、背中心から両脇へ同じに上げて、後ろから線を見ます。
todo-nape_drop = 衣紋の抜き
    .over = 衣紋を{ $amount }深く抜く
    .under = 衣紋の抜きを{ $amount }減らす
    .practise = 長襦袢で首と衿の間にこぶしを入れて決め、紐を締めてから同じこぶしで測り、着物を着てからもう一度測ります。
todo-juban_overlap = 長襦袢の衿の重なり
    .over = 長襦袢の衿を{ $amount }深く合わせる
    .under = 長襦袢の衿を{ $amount }浅く合わせる
    .practise = 合わせて胸の下を片手で押さえ、紐の前に鏡でのど元を見ます。一回ごとに見て十回。
todo-kimono_overlap = 着物の衿の重なり
    .over = 着物の衿を{ $amount }深く合わせる
    .under = 着物の衿を{ $amount }浅く合わせる
    .practise = 肩から下へ二本の指で着物の衿を長襦袢の衿に沿わせ、紐が両方を押さえるまで離しません。
todo-obi_lower_edge = 帯の高さ
    .over = 帯下線を{ $amount }高くする
    .under = 帯下線を{ $amount }低くする
    .practise = 腰骨に指を当てて高さを決め、一巻き目をそこに置き、二巻き目を締める前に横から見ます。
todo-drum_height = お太鼓の高さ
    .over = お太鼓を{ $amount }大きく作る
    .under = お太鼓を{ $amount }小さく作る
    .practise = 仮紐で自分の手の寸法に折り、鏡で比べて開きます。結ばずに十回。
todo-tare_length = たれの長さ
    .over = たれを{ $amount }長く残す
    .under = たれを{ $amount }短くする
    .practise = 帯締めの前に人差し指をたれに沿わせ、締めるまでその折りを押さえます。
todo-obiage_show = 帯揚げの幅
    .over = 帯揚げを{ $amount }広く見せる
    .under = 帯揚げを{ $amount }狭く見せる
    .practise = 机の上で見せる幅に折り、掛けるたびに折り直します。
todo-waist_padding = 胴の補整
    .over = 胴の補整を{ $amount }厚くする
    .under = 胴の補整を{ $amount }薄くする
    .practise = 当てる前にタオルを並べて数え、うまくいったときの枚数を書き留めます。
todo-hip_padding = 腰の補整
    .over = 腰の補整を{ $amount }厚くする
    .under = 腰の補整を{ $amount }薄くする
    .practise = 当てる前にタオルを並べて数え、うまくいったときの枚数を書き留めます。

## 送る文:$name は宛名

message-hello = { $name }さん
message-hello-all = こんにちは。
message-thanks = 着付けの写真{ $count ->
   *[other] { $count }枚
}をありがとうございます。
message-good = よくできた所：{ $what }。このとおりで良いので、続けてください。
message-way = まず一つ、写真では右が上に重なっています。鏡に映した写真なら問題ありません。そうでなければ、左を上にして巻き直してください。逆は亡くなった人の着方です。
message-way-mirrored = まず一つ、鏡の写真とのことですが、右が上に重なっています。鏡の写真でなければ問題ありません。鏡の写真なら、左を上にして巻き直してください。逆は亡くなった人の着方です。
message-changes = { $count ->
    [1] 次の一つを直してみましょう。
    [2] 次の二つを、この順に直してみましょう。
   *[other] 次の三つを、この順に直してみましょう。
}
message-one = { $number }. { $title }。
message-practise = 稽古：{ $how }
message-nothing = 直してほしい所はありません。
message-nothing-sure = 直してほしいと言い切れる所はありません。
message-nothing-read = まだ着付けを何も読み取れていないので、何も言えません。
message-stays = まだ残っている難（{ $faults }）は、手のせいではありません。着物と体の寸法の限りです。いっしょに見てみましょう。
message-skews = 左右が違います：{ $skews }。いっしょに両側を見比べましょう。
message-more = ほかにもありますが、まずこれらから。
message-bye = 急がずに。また写真を送ってください。

## 線を重ねた写真。$what は線の名、$amount は単位付き。

overlay-title = { $title }。{ $view }、見える線と望む線
overlay-desc = 望み：{ $moves }。
overlay-desc-same = 印を置いた線で動かすものはない。
overlay-seen = 見える線
overlay-wanted = 望む線
overlay-scale = 体の真ん中で{ $length }
overlay-higher = { $what }を{ $amount }上へ
overlay-lower = { $what }を{ $amount }下へ
overlay-left = { $what }を{ $amount }左へ
overlay-right = { $what }を{ $amount }右へ
overlay-line-hem = 裾
overlay-line-corner = 上前の褄先
overlay-line-edge = 上前の端
overlay-line-seam = 背縫い
overlay-line-seam_top = 背縫い
overlay-line-fold = おはしょり
overlay-line-tail = たれ
overlay-line-drum = お太鼓の下の折り
overlay-line-obi = 帯
overlay-line-obiage = 帯揚げ
overlay-line-collars = 衿
overlay-line-juban = 長襦袢の衿
overlay-line-nape = 衣紋
