# 図の言葉。

draw-title-front = { $title }(前姿)
draw-title-back = { $title }(後ろ姿)
draw-planned-value = 案では{ $value }
draw-legend-hidden = 布の下(腰紐、下前の端)
draw-legend-body = 体の線
draw-legend-planned = 案
draw-legend-fault = 望みの範囲の外
draw-scale = 縮尺 1:{ $scale }(A4・拡大縮小なしで印刷)

## 模型の章の図

draw-wrap = 上から見た巻き付け
    .desc = 衿先の高さでの着姿の断面。下が前。背縫いから上前は左を通って前へ巻き、右の脇線の手前 x で終わる。下前は反対に巻き、前中心を y だけ越える。
draw-balances = 三つの釣り合い
    .desc = 右から見た体と、後ろ・前・衿に沿った布。腰紐より上で余った布が二重に垂れておはしょりになる。
draw-collar = 衿の三角
    .desc = 衿は首の付け根から胸紐の反対側へ走る。交わりの下の三角が衿を支える。
draw-viewer = 人から見える裾
    .desc = 同じ裾を通る二本の視線。下から見ると脚の高いところに、近くの上から見ると低いところに見える。
draw-centre-back = 背中心 s = 0
draw-centre-front = 前中心 s = P/2
draw-left-side = 左の脇線
draw-right-side = 右の脇線
draw-outer-edge = 上前の端
draw-inner-edge = 下前の端
draw-side-neck = 首の付け根
draw-chest-tie = 胸紐
draw-juban-collar = 長襦袢の衿
draw-kimono-collar = 着物の衿
draw-juban-symbol = { $symbol }(長襦袢)
draw-from-below = 舞台の下から
draw-from-near = 近くに立つ人から
draw-front-path = 前 { $symbol }
draw-back-path = 後ろ { $symbol }
draw-right-path = 衿に沿って { $symbol }
