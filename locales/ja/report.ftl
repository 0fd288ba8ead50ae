# 点検の結果、渡す紙、人から見た裾。

report-to-check = 写真と目で見た所
report-sheet = 渡す紙
report-to-report = 結果の全文
report-empty = まだ結果はありません。読める写真がなく、目で見た所も選ばれていません。
report-empty-photo = 前か後ろからの写真を入れ、床と頭の天辺に印を付けます。ほかの印はそれに続きます。
report-empty-eye = 目で見た所を選ぶだけでも、わけと直し方が分かります。
report-stranger = 寸法が分からないため幅は広く、多くの長さは数センチまでしか分かりません。身長か、写真の中のＡ４の紙か巻尺があれば、ずっと狭くなります。
report-stranger-stature = 身長だけが分かっていて、ほかの寸法も着物の寸法も分かりません。胴回り、裄、骨の高さはその身長の人に多い値で、「案」はその人にとっていつもの形です。
report-untouched = 床と頭のほかは、まだ誰も印を動かしていません。線は案から見込んだ所か、その近くの輪郭にあるだけで、以下もそれだけの確かさです。まず裾、おはしょり、衿、帯の印を確かめてください。
report-by-hand = 印{ $all }個のうち手で付けたもの{ $count }個
report-photos = 見えるままと望む形
report-marks = 印を見る
report-unread = まだ読めない写真
report-unread-marks = 床と頭の天辺にまだ印がありません。
report-all = 読み取ったことすべて
report-fault = 所
report-off = 外れ

## 人から見た裾

seen-title = 人から見た裾
seen-done = 着付けたままの裾を、舞台の下、となり、写真から見たとき、脚のどの高さに見え、どれだけ足が見えるか。
seen-planned = この着付けの裾を、舞台の下、となり、写真から見たとき、脚のどの高さに見え、どれだけ足が見えるか。
seen-own = 自分の場所から
seen-own-how = ほかの場所から見るには、目の位置を入れます。
seen-eye = 床から目まで
seen-distance = 着る人まで
seen-range = { $low }〜{ $high }
seen-look = そこから見る

## 渡す紙

sheet-title = 次に直すところ
sheet-about = { $name }さんへ
sheet-png = 送る画像（PNG）
sheet-how = 渡すための一枚です。線を引いた写真、順に三つまでの直す所、よくできている所。
sheet-undecided = 顔を見せてよいかまだ決めていないので、外に出るものでは顔を隠してあります。
sheet-to-faces = 顔について決める
sheet-faces = 顔
sheet-faces-how = 四角は画像そのものに塗り込むので、紙にも送るファイルにも下のものは残りません。引いて動かすか、矢印キーで動かし、Shiftと矢印キーで大きさを変えて、残します。
sheet-face-hide = 顔を隠す
sheet-face-show = 顔を見せる
sheet-face-box = 顔を隠す四角。矢印キーで動き、Shiftと矢印キーで大きさが変わります
sheet-face-left = 左から
sheet-face-top = 上から
sheet-face-width = 幅
sheet-face-height = 高さ
sheet-face-number = 「{ $typed }」は写真に対する割合ではありません。{ $low }〜{ $high }%で入れてください
sheet-face-save = 四角を保存する
sheet-face-undecided = まだ決めていないので隠しています
sheet-face-covered = 隠しています
sheet-face-shown = 見せています
sheet-message = 送る文
sheet-message-how = 体の寸法は入っていません。送る前に自由に書き直せます。
sheet-copy = コピーする
sheet-copied = 写しました。
sheet-copy-self = 選んであります。キーボードかメニューで写してください。
sheet-text = テキストファイルで
