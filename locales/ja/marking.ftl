# The page on which a photo is marked.

marking-title = 印：{ $view }
marking-no-script = 印を付けるには、スクリプトの動くブラウザが要ります。ここでは写真と印の一覧を見るだけになります。
marking-next = 次：{ $view }
marking-back = 点検に戻る

## What to do next

marking-tap-floor = 1／2：足元の床をタップしてください。
marking-tap-crown = 2／2：頭のてっぺんをタップしてください。
marking-tap-mark = この印の場所をタップしてください。
marking-tap-sheet-1 = 紙の左上の角をタップしてください。
marking-tap-sheet-2 = 紙の右上の角をタップしてください。
marking-tap-sheet-3 = 紙の右下の角をタップしてください。
marking-tap-sheet-4 = 紙の左下の角をタップしてください。
marking-tap-tape-1 = メジャーの下の端をタップしてください。
marking-tap-tape-2 = メジャーの上の端をタップしてください。
marking-ready = 印を一つずつ見て、ずれているものを動かしてください。ほかの印は付いて動きます。

## The picture and its tools

marking-tools = 写真の道具
marking-picture = 印の付いた写真
marking-undo = 元に戻す
marking-smaller = 縮小
marking-larger = 拡大
marking-keys = キーでは、矢印で選んだ印が写真の1ピクセル、Shiftと一緒なら10ピクセル動き、縁には寄りません。Enterでそこで合っていることにし、Ctrl+Zで一つ前に戻ります。
marking-legend = 形の意味
marking-by-hand = 手で置いた
marking-follows = 輪郭に合い、ほかに付いて動く
marking-guess = 見当だけ：置くか、合っていると言うまで読みません
marking-unsure = 不確か
marking-left-out = 外した
marking-not-in-sight = 見えない
marking-not-yet = まだ

## One mark

marking-marks = 印
marking-call-unsure = 不確かにする
marking-call-sure = ここで合っている
marking-let-follow = また付いて動かす
marking-leave-out = 外す
marking-again = 置き直す
marking-by-hand-now = 手で置く

## What else is known in the picture

marking-known = 置き方と、ほかに分かること
marking-known-how = どれもなくてかまいません。紙やメジャーがあると、どの長さも確かになります。身長が分からないときは特にそうです。
marking-snapping = 印を縁に寄せる
marking-snapping-how = 動かした印は、1 cm以内で一番近いはっきりした縁に寄ります。違う縁に寄るときは外してください。
marking-mirrored = 鏡に映して撮った
marking-mirrored-how = 左右が入れ替わります。
marking-lens-height = 床からレンズまでの高さ
marking-lens-height-how = cm、尺、インチのどれでも。分からなければ空のままに。
marking-sheet = A4の紙
marking-sheet-how = 足元の床に、長い辺を縦にして立てたもの。四つの角をタップします。
marking-sheet-set = 紙に印を付ける
marking-sheet-drop = 紙はない
marking-tape = メジャー
marking-tape-how = 足元の床に0を当ててまっすぐ立てたもの。その上の二か所をタップし、その間の長さを入れます。
marking-tape-set = メジャーに印を付ける
marking-tape-drop = メジャーはない
marking-tape-length = 二か所の間の長さ

## Saving

marking-saving = 保存しています…
marking-saved = 保存しました
marking-lost = スタジオにつながりません。印はこのブラウザに残り、つながればすぐに送られます。
marking-gone = この写真はもうスタジオにないので、印を保存できません。
marking-nonsense = 印を読み取れず、何も保存しませんでした。ページを開き直してください。
marking-stale = この間に、この写真の別の印が保存されました。
marking-stale-how = あなたの印はまだこのブラウザにあります。どちらを残しますか。
marking-stale-mine = 自分の印を残す
marking-stale-theirs = 保存された印にする
