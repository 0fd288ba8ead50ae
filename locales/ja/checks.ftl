# 点検の頁：案から、または採寸していない方の写真から始める。写真と、目で見た所。

checks-title = 点検
checks-what = 着付けのあとに、前と後ろの写真を撮り、少しだけ印を付け、目で見た所を選びます。寸法をセンチで読み取り、どこがなぜ外れ、何から直すかを示します。
checks-none = まだ点検はありません。
checks-search = 名前・着る人・着物を探す
checks-from-plan = 残した着付け案を点検する
checks-new = 採寸していない方の写真
checks-of-this = この着付けを点検する
checks-begin = 始める
checks-stranger = 採寸していない方
checks-no-photo = 写真はまだありません
checks-erase-what = 点検は写真、印、読み取ったことすべてとともに消えます。元には戻せません。
checks-plan = 着付け案
checks-unread = この点検はもう読めません。写真を見ることと消すことはできます

## 採寸していない方

checks-new-how = 寸法の分からない人から送られてきた写真のための点検です。読み取りの幅は広くなりますが、釣り合いは同じように見ます。
checks-new-stature = 本人から聞いていれば。身長か、写真の中のＡ４の紙か巻尺があれば、長さはずっと確かになります。

## 写真

checks-photos = 写真
checks-photos-how = 頭から床まで全身を、レンズを腰の高さに、部屋の許すかぎり離れて撮ります。足もとにＡ４の紙を立てると縮尺が決まります。場所や名前は残す前にファイルから除きます。
checks-side-front = 裾、上前、おはしょり、衿、帯、帯揚げを読みます。
checks-side-back = 背縫い、衣紋、お太鼓、たれを読みます。
checks-side-right = 衿先の位置。前から見えないときに頼ります。
checks-left = 左からの写真も加える
checks-choose = 写真を選ぶ・撮る
checks-send = 送る
checks-sending = 送っています…
checks-mark = 印を付ける
checks-marks-none = まだ印がありません
checks-marks = 印{ $count }個
checks-marks-unread = 印がもう読めません。写真を撮り直してください
checks-replace = 別の写真にする
checks-replace-what = この写真と入れ替わり、印も消えます。
checks-photo-erase = 写真を消す
checks-side-taken = この向きの写真がほかで加えられていました。そちらを残し、この写真は残していません。入れ替えるには、下の「別の写真にする」を使ってください。
checks-report = 点検の結果

## 目で見た所

checks-eye = 目で見た所
checks-eye-how = 印では分からない所です。見えたものを選んでください。測った所と同じ一覧に、わけと直し方とともに入ります。
checks-eye-count = { $count }か所
checks-eye-save = 見た所を保存する
checks-eye-stale = ほかの人が先に別の所を選んで残しました。下では両方を選んであります。確かめて、もう一度残してください。
checks-eye-theirs = 先に残された
checks-eye-mine = あなたが選んだ
