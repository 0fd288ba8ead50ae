# 図の言葉。

draw-title-front = { $title }(前姿)
draw-title-back = { $title }(後ろ姿)
draw-wanted-value = 希望 { $value }
draw-legend-hidden = 布の下(腰紐、下前の端)
draw-legend-body = 体の線
draw-legend-wanted = 希望
draw-legend-fault = 希望の範囲の外
draw-scale = 縮尺 1:{ $scale }(A4・拡大縮小なしで印刷)
