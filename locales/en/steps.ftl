# Steps of dressing, in order: the title and how to do it, for the dresser of another person.

step-padding = Padding (hosei)
    .text = Bring the trunk toward a straight cylinder: find its thickest place, leave that bare, and fill the narrow ones with thin towels, the hollow of the back first. Only as much as the numbers ask for: too much is hot and slips of its own accord.
step-juban = Juban
    .text = Draw the collar down at the back before the front is closed, and hold it by the back seam, not by the front. Cross the collars evenly, left over right, with a large overlap above the chest tie, then tie. The kimono collar can be no better than this one.
step-put_on = Kimono on
    .text = Lay the kimono over the shoulders, put the arms through, and set the back seam on the spine. Pull both sleeve ends out level, clip kimono and juban together at the collar, and hold the collar ends level in front.
step-hem = Hem
    .text = Hold both collars at their lower third, lift, and let the hem down evenly to its height at the back; the cloth lies flat against the back of the legs. Tying draws the hem up a little: leave that in hand.
step-front_cover = Front cover
    .text = Bring the outer panel (uwamae) round first until its collar end stands where the number says before the right side, and note where your hand holds it. If the back seam has to move for it, move it now. Then open the panel again without losing the hem.
step-shitamae = Inner panel (shitamae)
    .text = Carry the inner panel level round the body, and raise its front edge only when the hand has reached the left hip. What is too wide is folded back along the edge.
step-uwamae = Outer panel (uwamae)
    .text = Carry the outer panel level over it to the place found before, then raise its corner about half as much as the inner one. The collar end must lie where the tie will cross the collar above it.
step-koshihimo = Waist tie (koshihimo)
    .text = Lay the tie on with its middle at the right hip, cross it at the back, and pull it snug there where the hip bone carries it. Tie off the centre and tuck the ends in. Lower in front than at the back, and over the collar.
step-fold = Fold (ohashori)
    .text = Put both hands through the side openings and smooth front and back down to the tie, back first. Fold the inner panel's spare cloth up diagonally, so that the fold lies in a single layer, and lay its lower edge level.
step-collar = Collar
    .text = Lay the kimono collar along the juban's and set the nape drop again, from the seam below it, never by the kimono alone. Let the same width of han-eri show on both sides, and cross at the same height as the juban.
step-take_up = Take up and tie the chest
    .text = Lift what the fold has too much up under the bust, at the front, at the right and at the back as the numbers say, until the lower edge is level. Hold it with the chest tie and smooth the creases from the spine out to the sides.
step-obi = Obi
    .text = Set the lower edge in front, let it rise a little toward the back, and tighten turn by turn while she breathes in and out. Check the fold below it before the last turn: it is the easier one to mend now.
step-drum = Drum and tail
    .text = Seat the pillow on the knot, close against the back, and tie its cord forward and down. Fold the drum to its height with a spare cord as a guide, and leave the tail below it.
step-obiage = Obiage
    .text = Fold it in thirds and then in half, cover the pillow, and cross it in front. Draw the two sides tight in turn, never both at once, and tuck the ends in.
step-look = Look at the whole
    .text = Step back two paces: hem level, fold level, the crossing of the collars and the knots on one vertical, back seam on the spine. Then let her raise her arms, sit, and bow, and look again.

## Cautions. They say what is customary and send to those who know; they are no medical advice.

cautions-note = Customary cautions, no medical advice. What a doctor, a qualified first-aider or the rules of the place say comes first.
caution-tight_ties = No tie may press: a finger goes flat under each cord, a hand in at the top of the obi, and she can take a deep breath standing and sitting. Ask her, and ask again after a few minutes.
caution-fainting = If she turns pale, sick or dizzy: let her sit at once, loosen obijime, obi and chest tie in this order, give air, and call for qualified help if it does not pass quickly. An empty stomach, little sleep and no water make it likelier.
caution-pregnancy = Pregnancy: her doctor is asked before, and says yes or no. No cord across the belly, everything light and loose there; ask at each turn how she feels, and stop when she says so.
caution-heat = Heat: few layers, a thin towel where it sweats, water before and during, shade. Older people, children and whoever is ill or takes medicine are at more risk: follow the heat warnings and advice of the place.
caution-long_hem = A hem near the floor catches: lift the outer panel with the right hand on stairs, hold the handrail, and keep hem and sleeves clear of escalators, car doors and pedals.
caution-children = Children: ties loose, hems clear of the feet, breaks to drink and to go, and never a cord round the neck. An adult stays with them.
