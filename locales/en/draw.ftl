# What the drawings say.

draw-title-front = { $title }, from the front
draw-title-back = { $title }, from behind
draw-planned-value = planned { $value }
draw-legend-hidden = under the cloth: waist tie, inner edge
draw-legend-body = the body
draw-legend-planned = planned
draw-legend-fault = outside the wanted range
draw-scale = scale 1:{ $scale } on A4 without fitting to page

## The drawings of the model chapter

draw-wrap = The wrap from above
    .desc = The section of the clothed body at the height of the collar end, the front below. From the back seam the outer panel runs over the wearer's left and the front to its edge, a front cover x before the right side line; the inner panel runs the other way and ends y past the centre front.
draw-balances = The three balances
    .desc = The body from its right side with the cloth of the back, of the front and along the collar; above the tie the cloth that is left over hangs as a double fold.
draw-collar = The collar triangle
    .desc = The collars run from the side neck points to the other side at the chest tie. Below their crossing lies the triangle that carries them.
draw-viewer = The hem as others see it
    .desc = Two sight lines past the same hem: from below it seems higher against the leg, from near and above lower.
draw-centre-back = centre back, s = 0
draw-centre-front = centre front, s = P/2
draw-left-side = left side line
draw-right-side = right side line
draw-outer-edge = outer edge (uwamae)
draw-inner-edge = inner edge (shitamae)
draw-side-neck = side neck point
draw-chest-tie = chest tie
draw-juban-collar = juban collar
draw-kimono-collar = kimono collar
draw-juban-symbol = { $symbol } (juban)
draw-from-below = from below a stage
draw-from-near = from someone standing near
draw-front-path = front: { $symbol }
draw-back-path = back: { $symbol }
draw-right-path = along the collar: { $symbol }
