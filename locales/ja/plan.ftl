# 着付け案について言うこと:望みが叶うか外れるか、何が妨げるか、打つ手、着る値打ち。

check-line = { $what }：{ $value }（{ $interval }）、望み{ $range }：{ $verdict }
check-met = 納まる
check-nearly-met = 数ミリの違いで納まる

binding-low = { $decision }：これより小さくできない。1 cmにつき{ $gain }効く
binding-high = { $decision }：これより大きくできない。1 cmにつき{ $gain }効く
binding-locked = { $decision }：決めたところに留めてある。1 cmにつき{ $gain }効く
rival = { $what }：1 cm良くなるごとに{ $cost }外れる

## 打つ手

way-out-enough = { $remedy }納まる
way-out-left = { $remedy }外れが{ $left }に減る
remedy-let_out_sides = 脇を一周で{ $amount }出せば
remedy-let_out_yuki = 袖付けと肩で裄を片側{ $amount }出せば
remedy-wider_garment = 身幅が一周で{ $amount }広い着物なら
remedy-narrower_garment = 身幅が一周で{ $amount }狭い着物なら
remedy-longer_garment = 身丈が{ $amount }長い着物なら
remedy-shorter_garment = 身丈が{ $amount }短い着物なら
remedy-longer_yuki = 裄が{ $amount }長い着物なら
remedy-shorter_yuki = 裄が{ $amount }短い着物なら
remedy-more_waist_padding = 胴の補整をきまりより{ $amount }厚くすれば
remedy-more_hip_padding = 腰の補整をきまりより{ $amount }厚くすれば
remedy-lower_koshihimo = 腰紐をきまりより{ $amount }低く締めれば
remedy-higher_koshihimo = 腰紐をきまりより{ $amount }高く締めれば
remedy-more_take_up = 胸紐の下でさらに{ $amount }上げれば
remedy-lower_obi = 帯をきまりより{ $amount }低くすれば
remedy-higher_obi = 帯をきまりより{ $amount }高くすれば
remedy-shift_back_seam = 腰の背縫いをさらに{ $amount }ずらせば

## 着る値打ち:一行の訳

cut-narrow = 身幅が{ $amount }足りない
cut-wide = 身幅が{ $amount }余る
cut-short = 身丈が{ $amount }足りない
cut-long = 身丈が{ $amount }余る
cut-sleeves_short = 裄が{ $amount }足りない
cut-sleeves_long = 裄が{ $amount }余る
reason-cut = { $cut }：{ $rest }
reason-still = { $what }はなお{ $miss }
reason-off = { $what }は{ $miss }
reason-then-met = これで納まる
reason-as-usual = いつもの着付けで納まる
reason-nearly-met = 数ミリを残して納まる
reason-all-met = すべて納まる
