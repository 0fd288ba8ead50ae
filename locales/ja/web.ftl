# 画面のことば。

## どの画面にもあるもの

page-skip = 本文へ
page-menu = メニュー
page-menu-home = はじめ
page-menu-people = 着る人
page-menu-garments = 着物
page-menu-plans = 着付け案
page-menu-checks = 点検
page-menu-rules = きまり
page-menu-settings = 設定
page-foot = 寸法も着付け案もこの機械の中だけにあり、どこにも送られません。
page-done-saved = 保存しました。
page-done-added = 加えました。
page-done-saved-twin = 保存しました。同じ名前がほかにもあります。どちらも残してあり、選ぶところでは名前に寸法を添えます。
page-done-added-twin = 加えました。同じ名前がほかにもあります。どちらも残してあり、選ぶところでは名前に寸法を添えます。
page-done-erased = 関わるものもすべて消しました。
page-done-kept = 着付け案を残しました。
page-done-reset = 慣習のきまりに戻しました。

## いくつもの画面で使うことば

edit = 直す
erase = 消す
save = 保存
cancel = やめる
search = 探す
search-none = 「{ $sought }」は見つかりません。
met = 望みどおり
mark-unlikely = ありそうにない：測り直し
mark-moved = 体の順に合わせて動かした値
col-measure = 寸法
col-part = 部分
col-value = 値
col-interval = 十に九はこの間
col-origin = 出どころ
col-wish = 見え方
col-wanted = 望む範囲
col-met = 望みどおりか
col-decision = 手の加減
col-usual = いつも
name-told-apart = { $name }（{ $telling }）
deviation-of = { $what }の誤差
erase-title = { $name }を消しますか
erase-yes = はい、消します
erase-no = いいえ、戻ります

## 書き込み

field-name = 名前
field-sex = 補うもとの表
field-note = 覚え書き
field-kind = 種類
field-cloth = 布
field-mitake_from = 身丈の測り始め
form-errors = 見直すところが{ $count }か所あります。書いたものはすべて残っています
form-erased-meanwhile = 書いている間に、別の窓で消されました。書いたものはここに残っています。新しく保存するか、やめるかを選んでください。
conflict-title = 二つの窓で保存されました
conflict-how = この書き込みを開いたあとに、別の窓で保存されました。失われたものはありません。違いのあるところを両方並べました。片方の窓だけで直した行はもう選んであります。両方で直した行を選んでから保存してください。
conflict-caption = 違いのある行だけを示します。
conflict-field = 項目
conflict-mine = あなたの書き込み
conflict-theirs = 別の窓の書き込み
conflict-empty = （空欄）
conflict-choose = 両方の窓で直されています。残すほうを選んでください
conflict-save = 選んだものを保存
conflict-leave = 別の窓のままにする

## はじめ

home-title = 何をしますか
home-what = 着る人を測り、着物を入れ、ひもを結ぶ前に着姿を確かめます。
home-measure = 人を測る
home-measure-how = { $count ->
    [0] 身長と腰回りがあれば始められます。測るほど着付け案は確かになります。
   *[other] { $count }人います。身長と腰回りがあれば加えられます。
}
home-enter = 着物を入れる
home-enter-how = { $count ->
    [0] 身丈と後幅があれば始められます。
   *[other] { $count }枚あります。身丈と後幅があれば加えられます。
}
home-plan = 着付けを考える
home-plan-later = 着る人と着物が入れば始められます。
home-check = 点検する
home-check-how = { $count ->
    [0] 着付けのあとに、どこがなぜ外れ、何から直すかを写真から見ます。
   *[other] 着付けのあとに、どこがなぜ外れ、何から直すかを写真から見ます。点検は{ $count }件あります。
}
home-check-open = 点検を開く
home-person = 着る人
home-garment = 着物
home-recent = 最近の着付け案

## 着る人

people-title = 着る人
people-new = 人を加える
people-none = まだ誰もいません。身長と腰回りがあれば始められます。
people-search = 名前か覚え書きで探す
people-form-how = 要るのは名前、身長、腰回りだけです。測っていないところは空けておきます。長さは 161、161.5 cm、4尺2寸5分、5 ft 3 in など、好きな書き方でかまいません。± のあとには、どれほど違うかもしれないかを書けます。
people-erase-what = この人の寸法、覚え書き、残した着付け案をすべて消します。元には戻せません。前に作った控えには残っています。新しい控えを作り、古いものは消してください。
person-first = 要るもの
person-telling = 効き目の大きいもの
person-telling-why = 手間のわりに、着付け案がずっと確かになります。
person-more-heights = そのほかの高さ（床から）
person-more-girths = そのほかの回り
person-more-lengths = 幅、腕、手
person-heights = 高さ（床から）
person-girths = 回り
person-lengths = 幅、腕、手
person-worth = 何が着られるか
person-plan-with = 合わせる着物
person-unlikely = 測り直したいところ
person-measures = 寸法
person-measures-how = 測っていないところは、似た体つきの人々から補いました。どれほど確かかは幅で示します。
person-plans = 残した着付け案

## きもの

garments-title = 着物
garments-new = 着物を加える
garments-none = まだ一枚もありません。身丈と後幅があれば始められます。
garments-search = 名前か覚え書きで探す
garments-form-how = 平らに広げ、縫い目から縫い目までの出来上がりを測ります。測っていないところは空けておけば、仕立ての割り出しで補い、しるしを付けます。長さは 161、4尺2寸5分 など、好きな書き方でかまいません。
garments-erase-what = この着物を消します。元には戻せません。残した着付け案は、当時の着物の寸法とともに残ります。
garment-first = 着付けのかなめ
garment-first-least = 要るのは身丈と、後幅か前幅のどちらか一つです。
garment-more = そのほかの部分
garment-suits = 誰に合うか
garment-plan-for = 着る人
garment-unusual = 変わったところ
garment-parts = 部分
garment-parts-how = △の部分は測っていません。補った割り出しと出典を添えました。
garment-cut-for = 丈と幅から見て、身長およそ{ $height }、腰回りおよそ{ $hip }の人の仕立てです。

## 着られるか

worth-garments-title = { $name }に合う着物
worth-people-title = 「{ $name }」が合う人
worth-again = 並べ直す
worth-nothing = 並べるものがまだありません。
worth-left = 読めないか寸法に食い違いがあり、外したもの。開いて直せます

## 残してあるが読めないもの

unread-title = 読めないもの
unread-why = { $count }か所が読めません。書き込みの画面に、残してあるものと直し方が出ます。
unread-form = 残してありますが、このままでは読めません。どの欄にも残してあるものが出ています。印のある欄を直して保存してください。
unread-left-out = この欄はどの画面にもありません。要るものは写してください。保存すると外れます。
unread-mend = 直す
unread-nameless = 名前なし、番号{ $number }
unread-occasion = 知らない場
unread-dresser = 着付ける手として選ばれている{ $name }の記録が読めません。

## 着付け案

plan-title = { $person } × { $garment }
plan-open = 着付け案を開く
plan-occasion = 場
plan-all-met = { $count }の望みはすべてかないます。
plan-missed = { $count }のうち{ $missed }がかないません：
plan-miss = { $what } { $miss }
plan-group-hem = 裾と褄
plan-group-width = 腰回り
plan-group-tie = 腰ひもとおはしょり
plan-group-collar = 衣紋と衿
plan-group-obi = 帯
plan-group-padding = 補整
plan-usual = いつも { $usual }、限り { $range }
plan-outside = 限りの外
plan-lock = 動かさない
plan-redraw = 描き直す
plan-ask = 案を求める
plan-ask-how = 「案を求める」は、「動かさない」のほかの数をすべて決め直します。
plan-lost = 応えがありません。プログラムは動いていますか。数はこの画面の番地に残っています。
plan-unlike = 描いていません：下に読めない数があります。示しているのは別の着付けです。
plan-figure = 着姿（前と後ろ）
plan-notes = 図の番号
plan-front = 前
plan-back = 後ろ
plan-numbers = 見え方
plan-ways = かなわないところと手立て
plan-go-missed = かなわないところ
plan-met = 望みどおりのもの：{ $count }
plan-nothing-missed = かなわない望みはありません。
plan-held-by = 妨げ：
plan-rivals = かなえるには、次のものが譲ることになります：
plan-rival = { $what }：1 cmにつき{ $cost }
plan-ways-out = 手立て：
plan-meets-it = 「案を求める」とかないます。
plan-ways-later = 手立てを探しています…
plan-no-way-out = 一つの手立てでは、無理なくかなえられません。
plan-steps = 手順
plan-hands-own = 指・人差し指・こぶしは{ $name }の手です。誰の手で着せるかは設定で選べます。
plan-hands-worn = 指・人差し指・こぶしは着る人の手です。誰の手で着せるかは設定で選んでください。
plan-save = この案を残す
plan-save-title = 案の名前
plan-keep = 案を残す
plan-keep-name = あとで見つけられるように、名前を付けてください。
plan-keep-long = 名前が長すぎます。80字までです。
plan-keep-numbers = まだ残していません。上に読めない数があります。
plan-print = 紙に出す
plan-picture = 壁に貼る図
plan-history = この二つの残した案

## 残した案と紙

saved-title = 着付け案
saved-none = 残した案はまだありません。着付け案を開き、名前を付けて残してください。
saved-read-only = { $day }に残した案です（場：{ $occasion }）。着る人、着物、きまりはその時のままです。
saved-reopen = ここから考え直す
saved-print = 紙に出す
saved-gone = 着る人か着物がそのあと消されたので、ここから考え直すことはできません。
saved-erase-what = 残した案を消します。元には戻せません。着る人と着物は残ります。
saved-do = 手の加減
saved-search = 案、人、着物の名前で探す
print-button = 印刷
print-back = 案へ戻る
print-scale = 図の縮尺 1 : { $scale }
print-date = { $day } 印刷
print-occasion = 場：{ $occasion }

## きまり

rules-title = きまり
rules-what = どう見えればよいか、いつもはどう着せるか。慣習から始まり、流儀や家ごとの写しを持てます。
rules-own = 自分のきまりを使っています。
rules-customary = 慣習のきまりを使っています。初めて直すと、自分の写しができます。
rules-every = どの場でも
rules-toml = きまりの全文（TOML）
rules-toml-how = 長さは cm です。受け取る前にすべて確かめます。
rules-toml-label = きまり
rules-toml-wrong = この文はまだ受け取れません。書いたものはそのまま残っています
rules-reset = 慣習のきまりに戻す
rules-reset-what = 自分のきまりを消し、慣習のきまりに戻します。残した案はそのままです。
rules-reset-yes = はい、慣習に戻します
rules-meanwhile = この画面を開いたあとに、別の窓できまりが変わりました。失われたものはありません。書いたものはここに残っています。もう一度保存すると、違うところはここに書いたものになります。
rules-meanwhile-field = 別の窓では「{ $theirs }」、ここでは「{ $mine }」
rules-meanwhile-theirs = 別の窓のきまり
rules-meanwhile-reset = この画面を開いたあとに、別の窓できまりが変わりました。戻す前に、もう一度見てください。
rules-how = 長さは 7、7 cm、1寸8分 など、好きな書き方でかまいません。cm に直して残し、示します。身長によるときは 0.17 身長 + 2 のように書きます。空いた側には限りがありません。行をすべて空けると、望みのないことになります。
rules-how-occasion = 「どの場でも」と違う行だけが、この場のきまりとして残ります。行をすべて空けると、ほかの場がどうあれ、この場では望みのないことになります。いつもの値を空けると、「どの場でも」の値になります。
rules-without = この場では望みません。「どの場でも」の数を書くと、その望みに戻ります。
rules-stature = 身長
rules-wishes = 望むこと
rules-usual = いつもの着せ方
rules-low = 少なくとも
rules-high = 多くとも
rules-weight = 重み
rules-source = 出典
rules-plus = いつも
rules-soft = いつも（柔らかい布）
rules-cotton = いつも（木綿）
rules-stiff = いつも（かたい布）
rules-least = 少なくとも
rules-most = 多くとも
rules-spread = 加減の幅
rules-hands = 手のばらつき
rules-from-floor = cm。高さは床から。
rules-from-hip-bone = 腰骨から上へ、cm。
rules-no-amount = 「{ $typed }」は長さとして読めません。7、1寸8分、または 0.17 身長 + 2 のように書いてください
rules-no-number = 「{ $typed }」は { $low } から { $high } までの数ではありません
rules-no-length = 「{ $typed }」は { $low } から { $high } cm までの長さではありません。7 や 1寸8分 のように書いてください
rules-low-above-high = 「{ $typed }」は上の限りを越えています。二つを入れ替えるか、どちらかを空けてください

## 設定

settings-title = 設定
settings-language = 言語
settings-hands = 着せる人の手
settings-hands-what = 手順の長さは着せる人の手で言います。着せる人を「着る人」に加え、指と手を測って入れ、ここで選んでください。
settings-dresser = 着せる人
settings-dresser-none = 選ばない：着る人の手を使う

## うまくいかないとき

error-home = はじめへ戻る
error-not-found = この番地には何もありません。消されたか、書き間違いかもしれません。
    .title = 見つかりません
error-method = この番地は、その画面から送られた書き込みだけを受け取ります。
    .title = 受け取れません
error-unread = 番地に書かれたとおりには描けないので、何も描きません：
    .title = このとおりには描けません
error-kept = ここにある寸法は、今の決まりでは食い違っています。直すと先へ進めます：
    .title = 寸法が食い違っています
error-unreadable = 残してありますが、このままでは読めません。失われたものはありません。書き込みの画面に、残してあるままの欄が出ます。
    .title = 読めない記録です
error-plan = この案は残してありますが、もう読めないので、出しません。ほかの数で描くと、別の案になってしまいます。
    .title = 読めない案です
error-standard = 自分のきまりが今の決まりに合わなくなり、着付け案が出せません。全文を直すか、慣習のきまりに戻してください。
    .title = きまりを読めません
error-ours = できませんでした。前に保存したものは無事です。もう一度試してください。また起きたら、プログラムを始めたところに出た文を見てください。
    .title = うまくいきませんでした
error-in-use = 別のプログラムが同じ記録を使っています。閉じてからもう一度試してください。何も変わっていません。
    .title = 記録は使用中です
error-traces = どの画面からも消えましたが、別のプログラムが使っているため、ファイルの中に跡が残っているかもしれません。このファイルを使うプログラムをすべて閉じてから、もう一度開いてください。
    .title = 消しましたが、跡が残っているかもしれません
error-host = この画面は、この機械の名前にだけ応えます。http://localhost とポートで開いてください。
error-elsewhere = 受け取れません。書き込みがこの画面ではなく、よその画面から送られました。
error-too-long = 受け取れません。書き込みが長すぎます。
