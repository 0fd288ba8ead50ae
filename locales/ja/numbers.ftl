# 単位と確かさを付けた数、体や手に照らした言い方。数字は丸めた後に渡される。

cm = { $value } cm
cm-uncertain = { $value } ± { $sd } cm
interval = { $low }〜{ $high } cm
interval-signed = { $low }〜{ $high } cm
range-both = { $low }〜{ $high } cm
range-from = { $low } cm以上
range-to = { $high } cm以下
range-open = きまりなし

# 手順の数の一つ:$what は名前、$value は単位付き、$against は無いこともある。
number = { $what }：{ $value }（{ $interval }）
number-against = { $what }：{ $value }、{ $against }（{ $interval }）

# $count は半分刻みの数のキー:n0h は半分、n1 は1、n1h は1半。
fingers = { $count ->
    [n0h] 指半本
    [n1] 指1本
    [n1h] 指1本半
    [n2] 指2本
    [n2h] 指2本半
    [n3] 指3本
    [n3h] 指3本半
    [n4] 指4本
    [n4h] 指4本半
    [n5] 指5本
    [n5h] 指5本半
    [n6] 指6本
   *[other] 指{ $number }本
}
index-fingers = { $count ->
    [n1] 人差し指1本
   *[other] 人差し指{ $number }本
}
fists = { $count ->
    [n1] 軽く握ったこぶし1つ
    [n1h] 軽く握ったこぶし1つ半
    [n2] 軽く握ったこぶし2つ
    [n2h] 軽く握ったこぶし2つ半
    [n3] 軽く握ったこぶし3つ
   *[other] 軽く握ったこぶし{ $number }個
}
against-at = { $landmark }の高さ
against-above = { $landmark }の{ $fingers }上
against-below = { $landmark }の{ $fingers }下

and-then = { $first }、{ $next }
cm-under = { $value } cm未満
