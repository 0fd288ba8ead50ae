# コマンドの言葉。長い文はここにある行のまま表示される。

## 使い方

cli-usage = 使い方：
cli-commands = コマンド
cli-options = オプション
cli-arguments = 引数
cli-about = 紐を一本締める前に、着物がその人にどう納まるかを計画します。
cli-long =
    紐を一本締める前に、着物がその人にどう納まるかを計画します。

    人と着物の採寸をケースファイルに書きます。測らなかった寸法を補い、着物の合い方を
    示し、紐と端の位置をすべて数で決め、叶わないことと、どうすれば叶うかを言います。

    長さは書き慣れた形で読みます：161、"161 cm"、"4尺2寸5分"、"4 shaku 2 sun 5 bu"、
    "5 ft 3 in"。尺は鯨尺です。ファイルに shaku = "kane" と書けば曲尺になります。
    確かさは {"{"} value = 161, sd = 0.5 {"}"} のように書きます。
cli-example =
    使用例：ケースファイルの見本を見て、自分のものを書き、計画し、図にします。

      $ sunbu help case
      $ sunbu plan case.toml
      $ sunbu figure case.toml -o figure.svg

    終了コード：0 は済み、1 は「叶わない」という答え（訳は本文に）、2 は入力の誤り
    （誤りはすべて一度に示します）。
cli-plan = 一人に一枚をどう着せるのが一番よいかを計画する
cli-plan-long =
    次の順に示します：どこまできれいに着せられるか、その訳。採寸した値と補った値。
    望みのそれぞれの値、90 %の範囲、望む範囲。外れるものは、何が妨げるか、叶えると
    何が崩れるか、打つ手ごとにどれだけ良くなるか。最後に着付けの手順を、センチと、
    体や手に照らした長さと、注意とともに示します。
cli-plan-example =
    使用例：舞台用に、後ろの腰紐を90 cmに決めて残りを任せます。次に同じものをJSONで。

      $ sunbu plan case.toml --occasion stage --set koshihimo_back=90
      $ sunbu plan case.toml --occasion stage --set koshihimo_back=90 --json

    決められるものは sunbu help decisions、文書のスキーマは sunbu schema plan で
    見られます。終了コード 1 は、叶わない望みがあるということです。
cli-rank = ケースの着物を、きれいに着せられる順に並べる
cli-rank-long =
    どの着物もその人に合わせて計画し、良い順に、見立てと一行の訳を付けて並べます。
cli-rank-example =
    使用例：礼装にはこの中のどれか。

      $ sunbu rank wardrobe.toml --occasion formal

    終了コード 1 は、すべての望みが叶う着物がないということです。
cli-figure = 計画した着姿を縮尺どおりのSVGに描く
cli-figure-long =
    前と後ろを、数をその場所に書き、難を線と印と言葉で示して描きます。壁に貼るA4の
    一枚にも、片面だけにもできます。
cli-figure-example =
    使用例：前だけを、いつもの着付けを別の線で並べて描きます。

      $ sunbu figure case.toml --view front --against usual -o front.svg
cli-open = 自分の帳面をブラウザで開く
cli-open-long =
    この機械の中だけで帳面を開き、ブラウザに表示します。Ctrl-Cで閉じます。保存した
    ものは残ります。--studio を書かなければ自分のデータフォルダに置きます。
cli-open-example =
    使用例：

      $ sunbu open --studio lessons.sunbu
cli-demo = 架空の人と着物の帳面を開く
cli-demo-long =
    体つきの大きく違う架空の十五人と着物四十枚（多くは寸法の合わない古着）の帳面を、
    すぐ使える形で開きます。
cli-demo-example =
    使用例：

      $ sunbu demo --port 8080
studio-open = Sunbuを開きました：{ $address }
arg-studio = 帳面のファイル
arg-port = 使うポート。書かなければ空いているもの
arg-no-browser = ブラウザを開かない
value-port = ポート
trouble-studio = 帳面 { $typed } を開けません：{ $reason }
cli-schema = 文書のJSONスキーマを表示する
cli-schema-long =
    --json の文書はこのスキーマに従います：plan、rank、入力の誤りは problems。名前を
    書かなければ名前の一覧を示します。長さはセンチです。
cli-schema-example =
    使用例：

      $ sunbu schema plan
cli-help = コマンドや事項の説明を表示する
cli-help-long =
    事項：case（説明付きの見本。そのままケースファイルになる）、measures（体の寸法）、
    parts（着物の寸法）、decisions（決められること）、standard（望む範囲。自分の決まり
    を書き始めるファイル）。
cli-help-example =
    使用例：見本からケースファイルを書き始めます。

      $ sunbu help case

value-case = ケース.toml
value-file = ファイル
value-lang = 言語
value-name = 名前
value-occasion = 場
value-set = 加減=長さ
value-topic = 事項
value-view = 面
value-against = 比べるもの
arg-case = ケースファイル。- は標準入力から読む
arg-lang = 答えの言語：en、ja。なければ環境の言語
arg-help = この説明を表示する
arg-version = 版を表示する
arg-json = 一つのJSON文書で答える
arg-occasion = 場：indoors、formal、stage、everyday、practice。なければケースのとおり
arg-standard = 自分の決まりのファイル（sunbu help standard の形）
arg-garment = ケースのどの着物か、名前または1から数えた番号で
arg-set = 自分で決める加減（koshihimo_back=90 など）。何度でも書ける
arg-view = 描くもの：front、back、sheet、sheet-upright。なければ sheet
arg-against = 並べて描くもの：usual（いつもの着付け）、none。なければ none
arg-output = 標準出力でなくこのファイルに書く
arg-schema = 文書：plan、rank、problems
arg-topic = コマンド、または case、measures、parts、decisions、standard

## 事項

topic-measures = [person] の寸法のキー。最低限 stature と、hip_girth か fullest_girth が要ります。一つ増えるごとに計画が確かになります。高さは素足で床から。
topic-parts = [garment] の寸法のキー。最低限 mitake と、ushirohaba か maehaba が要ります。ほかは知られた割り出しで補い、印を付けます。
topic-decisions = 手の加減のキー。ケースの [dressing] か --set で決めます。決めたものはそのままに、残りを計画します。
topic-standard = 慣例の決まり：何を望み、ふつうどうするか。写しを直して --standard で渡すか、ケースの [standard] の下に書きます。場は次のとおりです：

## 言葉での計画

cli-title = { $garment }を着る{ $person }
cli-under = { $occasion }。決まり：{ $standard }。
cli-verdict = { $verdict }。{ $reason }。
cli-from = 元にした寸法（~ は採寸していないもの）
cli-given = { $name }：{ $value }、{ $origin }
cli-wishes = 望み（+ 納まる、x 外れる）
cli-missed = 叶わないことと、どうすれば叶うか
cli-missed-what = { $what }：{ $miss }
cli-held-by = 妨げるもの：
cli-rivals = 叶えると崩れるもの：
cli-ways-out = 打つ手：
cli-no-way-out = 手の届く一つの手では一割も減りません。
cli-locked = 着付ける人が決めたもの
cli-set = { $name }：{ $value }
cli-steps = 着付けの手順
cli-hands-of = 指とこぶしは{ $name }のものです。
cli-own-hands = 指とこぶしは着る人のものです。自分の手はケースの [dresser] に書きます。
cli-garments-for = { $name }の着物（良い順）
cli-row = { $name }：{ $verdict }
cli-written = { $file }に書きました。

## ケースの周りの誤り

trouble-no-file = このファイルはありません。名前とフォルダーを確かめてください
trouble-no-permission = 読む許可がありません。許可を確かめてください
trouble-folder = フォルダーです。ファイルを書いてください
trouble-unread = 読めません（{ $why }）
trouble-unwritten = 書けません（{ $why }）
trouble-standard = 決まりとして読めません（{ $why }）
trouble-occasion = 「{ $typed }」という場はありません。あるのは{ $known }です
trouble-set = 「{ $typed }」は 加減=長さ の形ではありません。koshihimo_back=90 のように書いてください
trouble-which-garment = ケースに着物がいくつもあります。どれか書いてください：{ $known }
trouble-same-name = 「{ $typed }」という着物がいくつもあります。代わりに1から数えた番号を書いてください
trouble-no-garment = 「{ $typed }」という着物はケースにありません。あるのは{ $known }です
trouble-schema = 「{ $typed }」という文書はありません。あるのは{ $known }です
trouble-topic = 「{ $typed }」というコマンドも事項もありません。事項は{ $known }です

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
