# コマンドの言葉。長い文はここにある行のまま表示される。

## 使い方

cli-usage = 使い方：
cli-commands = コマンド
cli-options = オプション
cli-arguments = 引数
cli-about = 紐を一本締める前に、着物がその人にどう納まるかの案を立てます。
cli-long =
    紐を一本締める前に、着物がその人にどう納まるかの案を立てます。

    人と着物の採寸をケースファイルに書きます。測らなかった寸法を補い、着物の合い方を
    示し、紐と端の位置をすべて数で決め、叶わないことと、どうすれば叶うかを言います。

    長さは書き慣れた形で読みます：161、"161 cm"、"4尺2寸5分"、"4 shaku 2 sun 5 bu"、
    "5 ft 3 in"。尺は鯨尺です。ファイルに shaku = "kane" と書けば曲尺になります。
    確かさは {"{"} value = 161, sd = 0.5 {"}"} のように書きます。
cli-example =
    使用例：ケースファイルの見本を見て、自分のものを書き、案を立て、図にします。

      $ sunbu help case
      $ sunbu plan case.toml
      $ sunbu figure case.toml -o figure.svg

    終了コード：0 は済み、1 は「叶わない」という答え（訳は本文に）、2 は入力の誤り
    （誤りはすべて一度に示します）。
cli-open = 自分の帳面をブラウザーで開く
cli-open-long =
    人、着物、動かすと図が変わる着付け案、着る値打ち、印刷。帳面はこの機械の中だけで
    開き、何も外へ出ません。すべては一つのファイルにあり、なければ作ります。Ctrl-C で
    閉じます。
cli-open-example =
    使用例：自分の帳面をメモリーに置きます。

      $ sunbu open --studio stick/studio.sunbu
cli-demo = 架空の人と着物の帳面を開く
cli-demo-long =
    見て回るためのものです。体格のさまざまな十五人と四十枚の着物があり、多くは古着で
    寸法が合いません。一時ファイルにあって閉じると消えますが、空のファイルを書けば
    そこに残ります。
cli-demo-example =
    使用例：空いている番号で、ブラウザーを開かずに。

      $ sunbu demo --port 0 --no-browser
cli-backup = 帳面を一つのファイルに写す
cli-backup-long =
    写しは読み返して確かめてから、済んだと言います。帳面は開いたままでかまいません。
cli-backup-example =
    使用例：

      $ sunbu backup march.sunbu
cli-restore = 控えを帳面に戻す
cli-restore-long =
    控えをまず確かめます。今の帳面の中身は置き換わるので、また要るかもしれなければ
    sunbu backup で写しておきます。帳面は先に閉じてください。
cli-restore-example =
    使用例：

      $ sunbu restore march.sunbu
cli-erase = 一人をその人のすべてとともに消す
cli-erase-long =
    その人と採寸と着付け案を消し、それらを除いてファイルを書き直します。前に取った控えには
    残っています。--yes がなければ、何が消えるかを言うだけです。
cli-erase-example =
    使用例：

      $ sunbu erase 千代 --yes
cli-plan = 一人に一枚をどう着せるのが一番よいか、案を立てる
cli-plan-long =
    次の順に示します：どこまできれいに着せられるか、その訳。採寸した値と補った値。
    望みのそれぞれの値、90 %の範囲、望む範囲。外れるものは、何が妨げるか、叶えると
    何が崩れるか、打つ手ごとにどれだけ良くなるか。最後に着付けの手順を、センチと、
    体や手に照らした長さと、注意とともに示します。
cli-plan-example =
    使用例：舞台用に、後ろの腰紐を90 cmに決めて残りを任せます。同じものをJSONで。下の席から見た裾。

      $ sunbu plan case.toml --occasion stage --set koshihimo_back=90
      $ sunbu plan case.toml --occasion stage --set koshihimo_back=90 --json
      $ sunbu plan case.toml --occasion stage --seen-by below_stage

    --seen-by には below_stage、neighbour、camera、または目の高さと離れと、その床が
    着る人の床より上にある高さを 115,300,-120 のように書きます。

    決められるものは sunbu help decisions、文書のスキーマは sunbu schema plan で
    見られます。終了コード 1 は、叶わない望みがあるということです。
cli-rank = 人に合う着物、または着物に合う人を、良い順に並べる
cli-rank-long =
    すべてに案を立て、良い順に、見立てと一行の訳を付けて並べます。ケースの着物をその人に、
    帳面の着物をその一人に（--person）、帳面の人をその一枚に（--garment）。
cli-rank-example =
    使用例：礼装にはこの中のどれか。帳面の2番の人には何が合うか。1番の着物は誰に合うか。

      $ sunbu rank wardrobe.toml --occasion formal
      $ sunbu rank --person 2
      $ sunbu rank --garment 1

    終了コード 1 は、すべての望みが叶うものがないということです。
cli-figure = 案の着姿を縮尺どおりのSVGに描く
cli-figure-long =
    前と後ろを、数をその場所に書き、難を線と印と言葉で示して描きます。壁に貼るA4の
    一枚にも、片面だけにもできます。
cli-figure-example =
    使用例：案を壁に貼る一枚に。次に、いつもの着付けの前だけを、案の線を重ねて。

      $ sunbu figure case.toml -o sheet.svg
      $ sunbu figure case.toml --view front --show usual -o front.svg
cli-mark = 写真に印を付ける。案の見込む所に置き、輪郭に寄せる
cli-mark-long =
    ほかのすべてが決まる二つの所を書きます：足の間の床と、頭の頂。正立した写真の左上の
    角からの画素です。ほかの印は案の見込む所に置き、写真の近くのはっきりした線に
    寄せます。印のファイルは表示するか、-o で書きます。線の見つからなかった印には
    unsure = true と書きます。案の場所にあるだけで、それ以上のものではありません。

    確かめる前に、印を一つずつ見てください。案の見込みは読み取りではありません。
    動かすか、見えない所なら消します。すでにあるファイルには、--replace を付けたときだけ
    書きます。
cli-mark-example =
    使用例：前からの写真に印を付け、確かめます。

      $ sunbu mark case.toml --photo f.jpg --view front --floor 1510,3830 --crown 1500,310 -o f.toml
      $ sunbu check case.toml --photo f.jpg --marks f.toml

    写真の撮り方は sunbu help photos、印の説明は sunbu help marks にあります。
cli-check = 着付けを写真で確かめる。難、その訳、まず直すこと
cli-check-long =
    写真の印を、90 %の範囲とともにセンチで読み、ケースの案と比べます。次の順に
    示します：直すこと（着付けの順に三つまで）、良い所、難とその量、その訳、ほかに
    考えられる訳と見分け方、すべてを直す一番少ない手、左右の違い、見えなかったもの。

    一つの着付けの幾つかの面は一緒に確かめます。--photo と --marks を同じ順に、面ごとに
    一度ずつ書きます。何も残さず、何も外へ出しません。--stranger なら採寸は要らず、
    一番ありそうな体と着物で代え、範囲は広くなります。

    --overlay は写真に線を描き込みます。部屋も含めて写真のままなので、送る前には
    --hide-face で頭に無地の箱を重ねてください。その下の画素は残りません。着る人の名前は
    描き込みません。
cli-check-example =
    使用例：二つの面。線を描き込んだ一つの面。身長160 cmの人から送られた写真をJSON
    文書で。舞台の下の席からと、高さ150 cm、離れ2 mの目から見た裾。

      $ sunbu check case.toml --photo f.jpg --marks f.toml --photo b.jpg --marks b.toml
      $ sunbu check case.toml --photo f.jpg --marks f.toml --overlay lines.svg
      $ sunbu check --stranger --stature 160 --photo s.jpg --marks s.toml --json
      $ sunbu check case.toml --photo f.jpg --marks f.toml --seen-by below_stage --seen-by 150,200

    --seen-by には below_stage、neighbour、camera、または目の高さと離れと、その床が
    着る人の床より上にある高さを 115,300,-120 のように書きます。

    終了コード 0 は済み（難はどれも範囲に収められる）、1 は何を変えても残る難がある
    ということです。文書のスキーマは sunbu schema check、印のファイルのスキーマは
    sunbu schema marks で見られます。
cli-schema = 文書のJSONスキーマを表示する
cli-schema-long =
    --json の文書はこのスキーマに従います：plan、rank、check、入力の誤りは problems。
    marks は印のファイルの形です。名前を書かなければ名前の一覧を示します。長さはセンチ
    です。
cli-schema-example =
    使用例：

      $ sunbu schema plan
cli-help = コマンドや事項の説明を表示する
cli-help-long =
    事項：case（説明付きの見本。そのままケースファイルになる）、measures（体の寸法）、
    parts（着物の寸法）、decisions（決められること）、standard（望む範囲。自分のきまり
    を書き始めるファイル）、photos（写真の撮り方と印の付け方）、marks（印を付ける所）、
    faults（目で見る難）。
cli-help-example =
    使用例：見本からケースファイルを書き始めます。

      $ sunbu help case

value-case = ケース.toml
value-file = ファイル
value-port = 番号
value-lang = 言語
value-length = 長さ
value-pixel = 横,縦
value-seen-by = 誰|目,離れ[,床]
value-sex = 表
value-side = 面
value-name = 名前
value-occasion = 場
value-set = 加減=長さ
value-topic = 事項
value-view = 面
value-show = 着付け
arg-case = ケースファイル。- は標準入力から読む
arg-lang = 答えの言語：en、ja。なければ環境の言語
arg-help = この説明を表示する
arg-version = 版を表示する
arg-json = 一つのJSON文書で答える
arg-occasion = 場：indoors、formal、stage、everyday、practice。なければケースのとおり
arg-standard = 自分のきまりのファイル（sunbu help standard の形）
arg-garment = ケースのどの着物か、名前または1から数えた番号で
arg-set = 自分で決める加減（koshihimo_back=90 など）。何度でも書ける
arg-view = 描くもの：front、back、sheet、sheet-upright。なければ sheet
arg-show = 描く着付け：plan、usual（案の線を重ねる）。なければ plan
arg-output = 標準出力でなくこのファイルに書く
arg-replace = -o のファイルがあれば書き換える
arg-person = 帳面の着物をこの人に合わせて並べる（名前か番号）
arg-for-garment = 帳面の人をこの着物に合わせて並べる（名前か番号）
arg-studio = 帳面のファイル。なければデータのフォルダーのもの
arg-demo-studio = 見本を残す空か新しいファイル。なければ一時ファイル
arg-port = この機械のポート番号。0 は空いているもの
arg-no-browser = ブラウザーを開かない（所在は表示する）
arg-backup = 控えのファイル
arg-erase = 誰を（名前か番号）
arg-yes = 本当に行う。取り消せない
arg-photo = 写真（JPEG、PNG、WebP）。面ごとに一度ずつ
arg-marks = 写真の印のファイル。写真と同じ数を同じ順に
arg-overlay = 写真に線を描き込む（.svg か .png のファイル）。写真と同じ数を同じ順に
arg-hide-face = 描き込む写真の頭に無地の箱を重ねる
arg-seen-by = 前から裾を見る人。名前か目の場所で。何度でも書ける
arg-stranger = 採寸していない人の写真。ケースは要らない
arg-stature = その人の身長、聞いていれば
arg-sex = その人の代わりにする表：women、men。なければ women
arg-side = 写真に写る面：front、back、right、left（着る人の）
arg-floor = 足の間の床。写真の画素で（1510,3830 など）
arg-crown = 頭の頂。写真の画素で（1500,310 など）
arg-mirrored = 鏡に映した写真である
arg-no-snap = 印を案の見込む所に置いたままにする
arg-schema = 文書：plan、rank、check、marks、problems
arg-topic = コマンド、または case、measures、parts、decisions、standard、photos、marks、faults

## 事項

topic-measures = [person] の寸法のキー。最低限 stature と、hip_girth か fullest_girth が要ります。一つ増えるごとに案が確かになります。高さは素足で床から。
topic-parts = [garment] の寸法のキー。最低限 mitake と、ushirohaba か maehaba が要ります。ほかは知られた割り出しで補い、印を付けます。
topic-decisions = 手の加減のキー。ケースの [dressing] か --set で決めます。決めたものはそのままに、残りの案を立てます。
topic-standard = 慣習のきまり：何を望み、ふつうどうするか。写しを直して --standard で渡すか、ケースの [standard] の下に書きます。場は次のとおりです：
topic-photos =
    測れる写真
    ----------

    - 3 mより離れ、レンズを腰の高さにして、カメラをまっすぐに構えます。着る人は足を揃えて
      まっすぐ立ち、腕を体から少し離します。
    - 足元の床から頭の頂まで全身を入れます。切り取らないでください。写真の真ん中がレンズの
      向いた所です。ファイルそのものを使います。通信の途中で焦点距離が消えることがあります。
    - まず前から、次に後ろから。右の横からは上前の端が見えます。
    - 足元にA4の紙を縦に立てるか、零を床に付けたメジャーを立てて写すと、長さが確かに
      なります。測ったレンズの高さも役に立ちます。
    - 人の写真は、撮る前にも送る前にも承諾を得ます。書き出すものに場所や時刻や名前は
      入りません。渡したファイルはそのままです。

    印のファイル
    ------------

    写真一枚にTOMLのファイル一つ。画素は正立した写真の左上の角からの [横, 縦] です。印の
    名の左右は着る人の左右です。sunbu mark の書いたものから始め、画素の見える画像ソフトで
    確かめて直します。

      view = "front"               # front、back、right、left
      size = [3024, 4032]          # どの大きさの写真の画素か。なければ写真のまま
      mirrored = false             # 鏡に映したもの
      lens_height = 130            # 床から。"4尺"、{"{"} value = 130, sd = 3 {"}"} とも
      focal_35mm = 26              # 写真に焦点距離がないとき、35 mm判で
      seen = ["fold_wrinkled"]     # 目で見た難。sunbu help faults

      {"["}references]                 # ほかに大きさや向きの分かるもの
      sheet = [[700, 3500], [900, 3500], [900, 3785], [700, 3785]]  # A4、左上から
      tape = {"{"} ends = [[600, 3800], [602, 2900]], length = 90 {"}"}   # 下の端から
      uprights = [[[200, 300], [205, 3600]]]    # 柱など、両端で

      {"["}marks]                      # sunbu help marks に一覧
      floor = [1510, 3830]
      crown = {"{"} at = [1500, 310], unsure = true {"}"}   # 髪に隠れた見当
      hem_left = [1712.5, 3722]

    floor と crown は要ります。ほかは省いてよく、その長さは見えなかったと言います。
    ほかのプログラムのための形は sunbu schema marks で見られます。
topic-marks = 写真に印を付ける所。印のファイルの [marks] に書く名と、写る面。左右は着る人のものです。
topic-faults = 目で見る難。印のファイルの seen に書く名。印から測れるものは、書かなくても分かります。

## 言葉での案

cli-title = { $garment }を着る{ $person }
cli-under = { $occasion }。きまり：{ $standard }。
cli-verdict = { $verdict }。{ $reason }。
cli-from = 元にした寸法（~ は採寸していないもの）
cli-given = { $name }：{ $value }、{ $origin }
cli-wishes = 望み（+ 納まる、x 外れる）
cli-missed = 叶わないことと、どうすれば叶うか
cli-missed-what = { $what }：{ $miss }
cli-held-by = 妨げるもの：
cli-rivals = 叶えると崩れるもの：
cli-ways-out = 打つ手：
cli-no-way-out = 手の届く一つの手では三分の一も減りません。
cli-locked = 着付ける人が決めたもの
cli-set = { $name }：{ $value }
cli-steps = 着付けの手順
cli-hands-of = 指とこぶしは{ $name }のものです。
cli-own-hands = 指とこぶしは着る人のものです。自分の手はケースの [dresser] に書きます。
cli-garments-for = { $name }の着物（良い順）
cli-people-for = { $name }を着る人（良い順）
cli-left-out = 読めないので外したもの：{ $names }。記録を開いて直してください。
cli-row = { $name }：{ $verdict }
cli-written = { $file }に書きました。
cli-photo = { $file }：{ $view }
cli-stranger = 採寸していない人
cli-seen-by = 人から見た裾
cli-seen-by-one = { $who }（{ $place }）：{ $sentence }
cli-seen-by-eye = { $place }：{ $sentence }
cli-marked = { $file }に印を{ $count }個書きました。線の見つからなかったものは{ $guessed }個です。確かめる前に一つずつ見てください。
cli-marks-head = 案の見込む所に置き、写真の線に寄せた印です。一つずつ見て、ずれていれば動かし、見えない所なら消してください。unsure = true とあるもの（{ $guessed }個）は線が見つかりませんでした。

## 帳面

said-open = 帳面は{ $file }です。Ctrl-Cで閉じます。
said-demo = 中の人と着物はすべて架空です。Ctrl-Cで閉じると、書き込んだものも消えます。
said-not-empty = { $file }にはすでに人か着物があります。架空のものは加えず、そのまま開きます。Ctrl-Cで閉じます。
said-backup = { $file }に{ $people }人、{ $garments }枚、着付け案{ $plans }件を写し、読み返して確かめました。
said-restored = { $file }は{ $people }人、{ $garments }枚、着付け案{ $plans }件になりました。
said-erased = { $name }と着付け案{ $plans }件を消しました。前に取った控えには残っています。

## ケースの周りの誤り

trouble-no-file = このファイルはありません。名前とフォルダーを確かめてください
trouble-no-permission = 読む許可がありません。許可を確かめてください
trouble-folder = フォルダーです。ファイルを書いてください
trouble-unread = 読めません（{ $why }）
trouble-unwritten = 書けません（{ $why }）
trouble-standard = きまりとして読めません（{ $why }）
trouble-standard-line = { $line }行目「{ $typed }」はきまりとして読めません（{ $why }）。きまりの長さは単位のないセンチの数です
trouble-marks-count = 写真一枚に印のファイル一つを同じ順に書きます。写真が{ $photos }枚、印のファイルが{ $marks }個あります
trouble-overlay-count = 写真一枚にファイル一つを同じ順に書きます。写真が{ $photos }枚、描き込むファイルが{ $overlays }個あります
trouble-overlay-kind = 「{ $typed }」は .svg でも .png でも終わりません。どちらかの名にしてください
trouble-over-input = ここで読む{ $file }に重ねて書くことになります。別のファイルを書いてください
trouble-overlay-twice = 描き込むファイルとして二度書かれています。写真ごとに別のファイルにしてください
trouble-marks-there = すでにあります。動かした印が入っているかもしれません。別の名前にするか、書き換えるなら --replace を付けてください
trouble-pixel = 「{ $typed }」は写真の上の所ではありません。左上の角からの画素で、1510,3830 のように書いてください
trouble-seen-by = 「{ $typed }」は見る人ではありません。{ $known }、または目の高さと離れと、その床が着る人の床より上にある高さを 150,200,-100 のように書いてください
trouble-seen-by-eye = 「{ $typed }」の目の高さが、その床から{ $low }〜{ $high } cmの間にありません
trouble-seen-by-distance = 「{ $typed }」の離れが{ $low }〜{ $high } cmの間にありません
trouble-seen-by-floor = 「{ $typed }」の床が、着る人の床から{ $low }〜{ $high } cmの間にありません
trouble-occasion = 「{ $typed }」という場はありません。あるのは{ $known }です
trouble-set = 「{ $typed }」は 加減=長さ の形ではありません。koshihimo_back=90 のように書いてください
trouble-which-garment = ケースに着物がいくつもあります。どれか書いてください：{ $known }
trouble-same-name = 「{ $typed }」という着物がいくつもあります。代わりに1から数えた番号を書いてください
trouble-no-garment = 「{ $typed }」という着物はケースにありません。あるのは{ $known }です
trouble-schema = 「{ $typed }」という文書はありません。あるのは{ $known }です
trouble-topic = 「{ $typed }」というコマンドも事項もありません。事項は{ $known }です
trouble-no-place = この機械にはデータのフォルダーが決まっていません。--studio で場所を書いてください
trouble-no-studio = ここに帳面はありません。sunbu open で作れます
trouble-empty-studio = 帳面に並べるものがありません
trouble-not-ours = このプログラムの帳面ではありません。別のファイルを書いてください
trouble-newer = もっと新しい版で書かれています。その版を使ってください
trouble-damaged = 壊れています（{ $why }）。控えを戻してください
trouble-unreadable = 読めない記録「{ $name }」（番号{ $number }）があります。記録を開き、書き込みの画面で直すか、消してください。直すところ：
trouble-house-rules = 自分のきまりが今の決まりに合わなくなっています（{ $why }）。記録を開き、全文を直すか、慣習に戻してください
trouble-in-use = ほかのプログラムが使っています。閉じてからもう一度
trouble-exists = すでにあります。新しいファイルを書いてください
trouble-traces = 消しましたが、ファイルに跡が残っているかもしれません（{ $why }）。ほかのプログラムを閉じて、もう一度消してください
trouble-store = 使えません（{ $why }）
trouble-erased = それはもう帳面にありません
trouble-stale = その間に変わりました。見直してからもう一度
trouble-nobody = 「{ $typed }」は名前でも番号でも帳面にありません{ $near ->
    [0] {""}
   *[other] 。近いもの（かっこの中は番号）：{ $known }
}
trouble-several = 「{ $typed }」がいくつもあります。代わりに番号を書いてください：{ $known }
trouble-not-sure = 「{ $typed }」が着付け案{ $plans }件とともに消え、取り消せません。行うには --yes を付けてください
trouble-no-port = 「{ $typed }」はポート番号ではありません。0から65535までの数です
trouble-port = そこでは開けません（{ $why }）。別の番号か、空いているものの 0 を書いてください
trouble-network = 帳面を開けません（{ $why }）

## 引数の誤り

usage-no-command = 「{ $name }」というコマンドはありません。
usage-which-command = コマンドを書いてください。
usage-unknown = ここに「{ $what }」というオプションはありません。
usage-missing = 足りません：{ $what }
usage-conflict = { $what }はほかの引数と一緒に使えないか、二度書かれています。
usage-no-value = { $what }には値が要ります。
usage-bad-value = 「{ $value }」は{ $what }に使えません。使えるのは{ $known }です。
usage-not-text = 引数にUTF-8でない文字があります。
usage-other = 引数が読めません（{ $why }）
usage-see-help = コマンドの一覧は sunbu help、それぞれの使い方は sunbu help コマンド で見られます。
