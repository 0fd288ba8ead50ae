# What the drawings say.

draw-title-front = { $title }, from the front
draw-title-back = { $title }, from behind
draw-wanted-value = wanted { $value }
draw-legend-hidden = under the cloth: waist tie, inner edge
draw-legend-body = the body
draw-legend-wanted = wanted
draw-legend-fault = outside the wanted range
draw-scale = scale 1:{ $scale } on A4 without fitting to page
