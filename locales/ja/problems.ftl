# 入力のどこがおかしいか、どうすればよいか。$typed は書かれていた文字。

problem-at = { $place }：{ $sentence }
problem-missing = 必要ですが、書かれていません。測って入れてください
problem-missing-word = 必要ですが、書かれていません。入れてください
problem-missing-one-of = 必要ですが、書かれていません。これか、代わりに{ $others }を入れてください
problem-unreadable = { $why }
problem-wrong-shape = 「{ $typed }」はここに書けません。{ $expected }
problem-out-of-range = 「{ $typed }」は{ $low }〜{ $high } cmの範囲にありません。メジャーと単位を確かめてください
problem-number-out-of-range = 「{ $typed }」は{ $low }〜{ $high }{ $unit }の範囲にありません。確かめてください
problem-unknown-field = この名前の欄はありません。あるのは{ $others }です
problem-unknown-choice = 「{ $typed }」は選べません。{ $others }のどれかを書いてください
problem-no-choice = 必要ですが、書かれていません。{ $others }のどれかを書いてください
problem-together = { $sentence }（{ $others }と合わせて）
list-or = { $first }、{ $next }
problem-bad-text = 「{ $typed }」は残せません。制御文字を除き、{ $most }字までで書いてください
problem-bad-line = 「{ $typed }」は残せません。制御文字を除き、一行で{ $most }字までで書いてください
problem-form = 書式が読めません（{ $why }）
problem-form-at = 「{ $typed }」の書式が読めません（{ $why }）
problem-form-length = 「{ $typed }」は読めません。単位の付いた長さは引用符で囲んでください：{ $better }
problem-form-text = 「{ $typed }」は読めません。文字は引用符で囲んでください：{ $better }
problem-form-no-value = 「{ $typed }」は読めません。等号の後に値を書くか、行を消してください
problem-form-no-equals = 「{ $typed }」は読めません。名前 = 値 の形で書いてください
problem-form-heading = 「{ $typed }」は読めません。見出しは [person] や [[garments]] のように括弧で閉じてください
problem-form-quote = 「{ $typed }」は読めません。引用符が閉じていません
problem-form-twice = 「{ $typed }」は二度目です。どちらか一方にしてください
problem-line = { $line }行目
problem-not-text = UTF-8の文書ではなく、{ $seems }のようです。UTF-8で保存してください
problem-too-much = 大きすぎます。読むのは{ $most } MBまでです
problem-too-many = 問題は示した{ $told }件のほかにもあります。直してからもう一度読ませてください
encoding-utf-16 = UTF-16の文書
encoding-none = 文書でないもの
encoding-other = Shift JISなど別の文字コードの文書
expected-length = 161、"4尺2寸5分"、{ "{" } value = 161, sd = 0.5 { "}" } のように長さを書いてください
expected-text = 引用符で囲んだ文字を書いてください
expected-table = [このような] 見出しの表を書いてください
expected-tables = それぞれ [[garments]] の見出しの表を書いてください
expected-texts = ["fold_wrinkled", "obiage_untidy"] のように、引用符で囲んだ文字を並べてください
expected-truth = true か false を書いてください
expected-number = 数を書いてください
expected-size = [3024, 4032] のように、幅と高さを画素の整数で書いてください
expected-place = [1510, 3830] のように、左上の角からの画素で [横, 縦] を書いてください
expected-mark = 画素で [横, 縦]、または { "{" } at = [横, 縦], unsure = true { "}" } を書いてください
expected-sheet = 紙の四隅を [横, 縦] で、左上、右上、右下、左下の順に書いてください
expected-lines = 線は [[200, 300], [205, 3600]] のように両端で書いてください。何本も書ける所では並べてください
expected-pairs = 二本ずつの線の組を、線は両端で書いて並べてください
expected-tape = { "{" } ends = [[700, 3800], [702, 2900]], length = 90 { "}" } のように、下の端を先に書いてください

## 着物の寸法の食い違い

problem-contradiction-crown-not-above-floor = 頭の頂は床の印よりも、写真の高さの15 %以上は上になければなりません。二つが入れ替わっていませんか
problem-contradiction-mark-not-in-view = この向きの写真には写らない所です。外すか、写真の向きを選び直してください
problem-contradiction-marks-do-not-fit = この印どおりに写るカメラはありません。床と頭の頂から、一つずつ確かめてください
problem-contradiction-marks-of-another-picture = 印を付けた画像と写真の縦横の比が違います。この写真は正立で{ $photo_width }×{ $photo_height }画素です。印を付けた写真を、切り取らずに書いてください
problem-contradiction-range-empty = 下限{ $low } cmが上限{ $high } cmより上です。入れ替えるか、片方を空けてください
problem-contradiction-usual-outside = いつもの値{ $usual } cmが限度{ $low }〜{ $high } cmの外です。値か限度を直してください
problem-contradiction-weight-range = 重みは0から{ $most }までです
problem-contradiction-wish-and-without = 同じ名前の望みがこの場にあります。どちらかを外してください
problem-contradiction-yuki-split = 裄は{ $yuki } cmですが、肩幅と袖幅の和は{ $sum } cmです。三つとも測り直すか、怪しいものを空けてください
problem-contradiction-sodetake-split = 袖丈は{ $sodetake } cmですが、袖付けと振りの和は{ $sum } cmです。三つとも測り直すか、怪しいものを空けてください
problem-contradiction-sodetsuke-over-sodetake = 袖付け{ $sodetsuke } cmが袖丈{ $sodetake } cmより長くなっています。両方を肩山から測り直してください
problem-contradiction-sodeguchi-over-sodetake = 袖口{ $sodeguchi } cmが袖丈{ $sodetake } cmより長くなっています。両方を肩山から測り直してください
problem-contradiction-aizuma-over-okumi = 合褄幅{ $aizumahaba } cmが衽幅{ $okumihaba } cmより広くなっています。衽は上へ狭くなるので、入れ違いかもしれません
problem-contradiction-collar-end-above-garment = 衿先が裾から{ $erishita } cmになりますが、背の丈は{ $mitake } cmしかありません。衿下は前の端に沿って裾から衿先まで測ってください
problem-contradiction-collar-end-above-okumi = 衿先が裾から{ $erishita } cmになり、剣先の{ $okumi } cmより上です。衿下を前の端に沿って測り、身丈も測り直してください
problem-contradiction-yuki-impossible = 肩幅と袖幅から裄が{ $value } cmになります。あり得るのは{ $low }〜{ $high } cmです
problem-contradiction-katahaba-impossible = 裄と袖幅から肩幅が{ $value } cmになります。あり得るのは{ $low }〜{ $high } cmです
problem-contradiction-sodehaba-impossible = 裄と肩幅から袖幅が{ $value } cmになります。あり得るのは{ $low }〜{ $high } cmです
problem-contradiction-sodetsuke-impossible = 袖丈と振りから袖付けが{ $value } cmになります。あり得るのは{ $low }〜{ $high } cmです
problem-contradiction-sodetake-impossible = 袖付けと振りから袖丈が{ $value } cmになります。あり得るのは{ $low }〜{ $high } cmです
problem-contradiction-heights-order = { $lower } cmは、もう一方の高さの{ $upper } cmより下にはなりません。両方を測り直すか、一方を空けてください
problem-contradiction-neck-points = 首の横の付け根{ $side } cmと首の後ろの付け根{ $back } cmは{ $step } cmより離れています。両方を測り直すか、一方を空けてください
problem-contradiction-other-table = 使っている体格の表の性別が違います
problem-contradiction-table-degenerate = 体格の表では採寸した値を区別できません。別の表を使ってください
problem-contradiction-given-twice = 別の名前で同じ寸法も書かれています。どちらかを空けてください
problem-contradiction-garment-and-garments = [garment] を一つか [[garments]] をいくつか、どちらか一方で書いてください

## 着る人が困りそうな寸法

warning-shoulder-drag = 肩幅が後ろ幅より{ $difference } cm広くなっています。3.8 cmを越えると脇の縫い代がつれます
warning-shoulder-drag-slight = 肩幅が後ろ幅より{ $difference } cm広くなっています。3 cmまでが良く、3.8 cmまでは差し支えありません
warning-erishita-long = 衿先が裾から{ $erishita } cmで、慣習の83 cmを越えています。腰紐が衿に掛からず、前が落ち着かないことがあります
warning-dakihaba-wide = 前幅{ $maehaba } cmに対して抱き幅{ $dakihaba } cmは広めです。胸元の衿がだぶつくことがあります
warning-dakihaba-narrow = 前幅{ $maehaba } cmに対して抱き幅{ $dakihaba } cmは狭めです。衿が落ち着かないことがあります
warning-neck-deep = 繰り越しと付け込みを合わせて衿肩あきが肩山の{ $finished } cm後ろにあります。慣習は3.8 cmまでです

## 長さとして読めない訳

length-error-empty = 長さが書かれていません。161 cm や 4尺2寸5分 のように書いてください
length-error-too_long = 「{ $text }」で始まる文字は長さとしては長すぎます。161 cm のように長さだけを書いてください
length-error-not_a_number = 「{ $text }」は長さとして読めません。161、161.5 cm、4尺2寸5分、5 ft 3 in のように書いてください
length-error-ambiguous_comma = 「{ $text }」のコンマは二通りに読めます。桁の区切りには書かず、小数には点を使ってください
length-error-missing_unit = 「{ $text }」に単位のない数があります。4尺2寸5分 のように、どの数にも単位を付けてください
length-error-missing_number = 「{ $text }」の{ $unit }の前に数がありません。2{ $unit }のように書いてください
length-error-unknown_unit = 「{ $text }」の「{ $word }」は知らない単位です。cm、mm、m、ft、in、または丈、尺、寸、分、厘を使ってください
length-error-mixed_units = 「{ $text }」は{ $first }と{ $second }が混ざっています。どちらか一方で書いてください
length-error-repeated_unit = 「{ $text }」には{ $unit }が二度あります。一度だけにしてください
length-error-out_of_order = 「{ $text }」は{ $first }の後に{ $second }があります。大きい単位を先に書いてください
length-error-subunit_too_large = 「{ $text }」の{ $unit }が1{ $outer }に収まりません。{ $outer }の後は{ $limit }{ $unit }未満にしてください
length-error-fraction_not_last = 「{ $text }」は{ $unit }に端数があるのに小さい単位が続いています。端数は最後の数だけにしてください
length-error-too_large = 「{ $text }」は100 mを越えています。単位と桁数を確かめてください
length-error-negative = 「{ $text }」は零より小さくなっています。この長さは零以上です

## 珍しい体の寸法

unlikely = { $what }は{ $value }と採寸されていますが、ほかの寸法からは{ $expected }くらいのはずです。測り直してください。値はそのまま使います

## 長さの問題で呼ぶ単位

length-unit-m = m
length-unit-cm = cm
length-unit-mm = mm
length-unit-ft = フィート
length-unit-in = インチ
length-unit-jo = 丈
length-unit-shaku = 尺
length-unit-sun = 寸
length-unit-bu = 分
length-unit-rin = 厘
length-unit-mo = 毛
