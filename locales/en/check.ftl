# What a check of a finished dressing says: faults, causes, doubts, corrections, advice, and the
# message to send. Left and right are the wearer's.

## Right over left: said before all else

check-way = { $views }: right lies over left. Either it is a picture from a mirror, or the kimono is wrapped right over left, as only the dead are dressed. Check which before all else: all that follows was read as from a mirror.
check-way-mirrored = { $views }: said to be from a mirror, yet right lies over left. Either it is not from a mirror, or the kimono is wrapped right over left, as only the dead are dressed. Check which before all else: what follows was read as not from a mirror.
check-way-title = Look which way round it is wrapped
check-way-why = The photo shows right over left. A picture from a mirror does so too; if it is none, the kimono is wrapped as only the dead are dressed.
check-way-why-mirrored = The photo is said to be from a mirror, yet shows right over left. If it is from none, all is well; if it is from one, the kimono is wrapped as only the dead are dressed.
check-way-practise = Say it aloud at each wrapping: the wearer's left lies on top. A right hand slips into the breast of the collars.

## Headings

check-h-way = First of all
check-h-advice = To change, in this order
check-h-good = Well done
check-h-faults = Faults
check-h-perhaps = Perhaps faults
check-h-causes = Why: causes, and what the eye saw, in the order of dressing
check-h-doubts = What cannot be told apart
check-h-correction = The fewest changes
check-h-skews = Left against right
check-h-differences = Unlike the plan, and no fault
check-h-unseen = What was not to be seen
check-h-hidden = What could be wrong unseen
check-h-doubtful = Marks to look at again
check-h-cautions = Cautions

## A fault: value, interval, range. $line is a wish in one line.

check-finding-named = { $name }. { $line }
check-perhaps = { $line }; the reading is not sure enough to say
check-difference-more = { $what }: { $value } ({ $interval }), { $amount } more than planned
check-difference-less = { $what }: { $value } ({ $interval }), { $amount } less than planned
check-difference-left = { $what }: { $value } ({ $interval }), { $amount } further to her left than planned
check-difference-right = { $what }: { $value } ({ $interval }), { $amount } further to her right than planned
check-no-faults = Everything that was read lies within its range, as far as reading can tell.
check-nothing-read = No photo was read: only what the eye saw is told.

## A cause: by how much it leaves the plan, and what it explains. done-DECISION: the deed.

check-cause = { $deed } ({ $interval }), { $sure }
check-cause-explains = { $cause }: explains { $shares }
check-share = { $percent } % of “{ $fault }”
check-share-more = more than all of “{ $fault }” (partly made up for by something else)
check-sure-certain = as good as certain
check-sure-very = very likely
check-sure-likely = likely
check-sure-perhaps = perhaps
check-fault-short = { $what } { $miss }
check-unexplained = “{ $fault }” comes from none of these causes: from body, garment or reading
check-no-causes = No one cause stands out: hands, body and garment together.

## Doubts

check-doubt-instead = Instead of “{ $told }” it could be “{ $other }”: { $odds }.
check-doubt-besides = Besides, it could be “{ $other }”: { $odds }.
check-doubt-without = Perhaps “{ $told }” is not so: { $odds }.
check-doubt-single = It could be “{ $other }”: { $odds } as hands, body and garment together.
check-odds-same = as likely
check-odds-half = about half as likely
check-odds-fifth = about a fifth as likely
check-odds-tenth = about a tenth as likely
check-tell-photo = To decide, take or mark a photo { $views }: { $what } reads { $told } if what is told is right, { $other } if the other is.
check-tell-felt = To decide, feel through the cloth: { $what } is { $told } if what is told is right, { $other } if the other is.
check-tell-opened = To decide, look when you open it from the top down: { $what } is { $told } if what is told is right, { $other } if the other is.
check-tell-none = Nothing that could still be looked at would decide.
check-from-front = from the front
check-from-back = from behind
check-from-right = from her right
check-from-left = from her left
check-sentences = { $first } { $next }
check-or = { $first } or { $next }

## Corrections

check-change = { $do }: from { $from } to { $to }
check-change-cures = { $change }; helps { $faults }
check-left = { $fault } would stay: person and garment allow no more
check-more = { $count ->
    [one] One more thing would follow; first this much.
   *[other] { $count } more things would follow; first this much.
}

## What lies where: a decision's value where a sign alone would not say the side

check-to-left = { $amount } to her left
check-to-right = { $amount } to her right
check-centred = on the middle

## Left against right. $amount has its unit; $line is one of the skew- lines.

check-skew-alike = No difference that reading could tell: { $skews }.
check-skew-passes = { $line } ({ $interval }): passes, up to { $most }
check-skew-perhaps = { $line } ({ $interval }): perhaps too much, { $most } passes
check-skew-fault = { $line } ({ $interval }): too much, { $most } passes
skew-hem_slant = slant of the hem
    .over = hem { $amount } higher at her right than at her left
    .under = hem { $amount } higher at her left than at her right
skew-fold_lean = lean of the fold
    .over = fold { $amount } higher at her right than at her left
    .under = fold { $amount } higher at her left than at her right
skew-obi_slant = slant of the obi
    .over = obi { $amount } higher at her right than at her left
    .under = obi { $amount } higher at her left than at her right
skew-crossing_off = crossing of the collars off the middle
    .over = crossing of the collars { $amount } to her left of the middle
    .under = crossing of the collars { $amount } to her right of the middle
skew-han_eri_difference = han-eri
    .over = { $amount } more han-eri at her left
    .under = { $amount } more han-eri at her right
skew-nape_off = nape off the spine
    .over = middle of the nape { $amount } to her left of the spine
    .under = middle of the nape { $amount } to her right of the spine
skew-sleeve_difference = sleeves
    .over = left sleeve end { $amount } further from the wrist than the right one
    .under = right sleeve end { $amount } further from the wrist than the left one

## What was not to be seen

check-unseen = { $why }: { $what }.
check-eye = { $what }: { $why }
check-unseen-felt = Cloth lies over it; feel for it through the cloth
check-unseen-opened = Cloth lies over it; look when you open it from the top down
check-unseen-covered = Cloth lay over it
check-unseen-view = It shows { $view }
check-unseen-mark = The mark “{ $mark }” was not set
check-hidden = Nothing that was read could show whether these were done wrong: { $decisions }.
check-doubtful = { $view }: “{ $mark }” does not fit with the other marks; look whether it sits right.

## Advice

check-advice-why = Why: { $why }
check-advice-now = On the spot: { $how }
check-advice-next = To practise: { $how }
check-why-cures = { $faults }.
check-good = { $what }: { $value }, wanted { $range }
check-nothing-to-change = There is nothing to change.
check-nothing-sure = Nothing that is sure.
check-nothing-read-yet = Nothing was read yet, and nothing was ticked: mark a photo, or tick what the eye sees.
check-nothing-helps = No change of the hands would help: { $faults } would stay. Person and garment allow no more; the plan tells what would: another garment, taking up or letting out, padding.
check-nothing-skews = Left and right differ by more than passes: { $skews }. The program has no change to name for it; look at both sides.
check-nothing-good = Nothing that was read is within its range yet: that is what practice is for.

## What the hands did unlike the plan: done-DECISION; its name in a sentence: todo-DECISION, .over and .under what to do, .practise how to practise it

done-hem_height =
    .over = hem set { $amount } higher than planned
    .under = hem set { $amount } lower than planned
done-uwamae_raise =
    .over = outer edge (uwamae) raised { $amount } more than planned
    .under = outer edge (uwamae) raised { $amount } less than planned
done-shitamae_raise =
    .over = inner edge (shitamae) raised { $amount } more than planned
    .under = inner edge (shitamae) raised { $amount } less than planned
done-shitamae_fold_back =
    .over = inner edge (shitamae) folded back { $amount } more than planned
    .under = inner edge (shitamae) folded back { $amount } less than planned
done-back_seam_hip =
    .over = back seam at the hip { $amount } further to her left than planned
    .under = back seam at the hip { $amount } further to her right than planned
done-back_seam_top =
    .over = back seam above the fold { $amount } further to her left than planned
    .under = back seam above the fold { $amount } further to her right than planned
done-koshihimo_back =
    .over = waist tie (koshihimo) at the back { $amount } higher than planned
    .under = waist tie (koshihimo) at the back { $amount } lower than planned
done-koshihimo_front =
    .over = waist tie (koshihimo) in front { $amount } higher than planned
    .under = waist tie (koshihimo) in front { $amount } lower than planned
done-take_up_front =
    .over = { $amount } more taken up in front than planned
    .under = { $amount } less taken up in front than planned
done-take_up_right =
    .over = { $amount } more taken up at the right than planned
    .under = { $amount } less taken up at the right than planned
done-take_up_back =
    .over = { $amount } more taken up at the back than planned
    .under = { $amount } less taken up at the back than planned
done-nape_drop =
    .over = nape (emon) drawn { $amount } deeper than planned
    .under = nape (emon) drawn { $amount } less deep than planned
done-juban_overlap =
    .over = juban collars laid { $amount } further over than planned
    .under = juban collars laid { $amount } less over than planned
done-kimono_overlap =
    .over = kimono collars laid { $amount } further over than planned
    .under = kimono collars laid { $amount } less over than planned
done-obi_lower_edge =
    .over = lower edge of the obi { $amount } higher than planned
    .under = lower edge of the obi { $amount } lower than planned
done-drum_height =
    .over = drum (otaiko) folded { $amount } taller than planned
    .under = drum (otaiko) folded { $amount } shorter than planned
done-tare_length =
    .over = tail (tare) left { $amount } longer than planned
    .under = tail (tare) left { $amount } shorter than planned
done-obiage_show =
    .over = obiage showing { $amount } wider than planned
    .under = obiage showing { $amount } narrower than planned
done-waist_padding =
    .over = padding at the waist { $amount } thicker than planned
    .under = padding at the waist { $amount } thinner than planned
done-hip_padding =
    .over = padding at the hip { $amount } thicker than planned
    .under = padding at the hip { $amount } thinner than planned

todo-hem_height = height of the hem
    .over = Set the hem { $amount } higher
    .under = Set the hem { $amount } lower
    .practise = Stop before you wrap and look at the hem from behind; tie, and look again: what it rose is your own allowance. Five times, until the two looks agree to a centimetre.
todo-uwamae_raise = raise of the outer edge (uwamae)
    .over = Raise the outer edge (uwamae) { $amount } more
    .under = Raise the outer edge (uwamae) { $amount } less
    .practise = Carry the panel level all the way, stop at the right hip, raise the corner there and say by how much; tie and measure. Wrap ten times without going on.
todo-shitamae_raise = raise of the inner edge (shitamae)
    .over = Raise the inner edge (shitamae) { $amount } more
    .under = Raise the inner edge (shitamae) { $amount } less
    .practise = Raise the corner only when your hand has reached the left hip, then open the outer panel and compare both corners. Ten times with the outer panel left open.
todo-shitamae_fold_back = folding back of the inner edge
    .over = Fold { $amount } more of the inner edge (shitamae) back
    .under = Fold { $amount } less of the inner edge (shitamae) back
    .practise = Lay the inner panel across once, put a finger where it should end, open, and fold back to the finger along its whole length.
todo-back_seam_hip = back seam at the hip
    .over = Set the back seam at the hip { $amount } further to her left
    .under = Set the back seam at the hip { $amount } further to her right
    .practise = Hold the seam with one hand at the hip while the other sets the front cover, and look in the mirror before you wrap.
todo-back_seam_top = back seam above the fold
    .over = Set the back seam above the fold { $amount } further to her left
    .under = Set the back seam above the fold { $amount } further to her right
    .practise = After the collar, take both side openings in your hands and draw them evenly; the seam lies on the spine before the chest tie is tied.
todo-koshihimo_back = waist tie (koshihimo) at the back
    .over = Tie the waist tie (koshihimo) { $amount } higher at the back
    .under = Tie the waist tie (koshihimo) { $amount } lower at the back
    .practise = Find the height with your fingers on the body before you take up the tie, lay it on there and cross it without letting it climb. Ten times over a garment that need not look well.
todo-koshihimo_front = waist tie (koshihimo) in front
    .over = Tie the waist tie (koshihimo) { $amount } higher in front
    .under = Tie the waist tie (koshihimo) { $amount } lower in front
    .practise = Lay the middle of the tie on the right hip bone, cross the ends behind without lifting them, and bring them forward; feel both sides for the height before you tie off.
todo-take_up_front = taking up in front
    .over = Take up { $amount } more under the chest tie in front
    .under = Take up { $amount } less under the chest tie in front
    .practise = Pinch the cloth under the bust, look at the lower edge of the fold, and give or take until it stands right; only then tie. Watch the edge, not your fingers.
todo-take_up_right = taking up at the right
    .over = Take up { $amount } more under the chest tie at the right
    .under = Take up { $amount } less under the chest tie at the right
    .practise = Pinch at the right side, at the seam, until the edge of the fold runs level to the middle, and hold it while the tie passes over.
todo-take_up_back = taking up at the back
    .over = Take up { $amount } more under the chest tie at the back
    .under = Take up { $amount } less under the chest tie at the back
    .practise = Smooth the back down to the waist tie first, then take up evenly from the spine to both sides, and look at the edge from behind.
todo-nape_drop = nape drop (emon-nuki)
    .over = Draw the nape (emon) { $amount } deeper
    .under = Draw the nape (emon) { $amount } less deep
    .practise = Set it with a fist between neck and collar on the juban, tie, and measure again with the same fist; then once more after the kimono is on.
todo-juban_overlap = overlap of the juban collars
    .over = Lay the juban collars { $amount } further over
    .under = Lay the juban collars { $amount } less over
    .practise = Cross, hold with one hand under the bust, and look at the throat in a mirror before the tie; ten crossings, each looked at.
todo-kimono_overlap = overlap of the kimono collars
    .over = Lay the kimono collars { $amount } further over
    .under = Lay the kimono collars { $amount } less over
    .practise = Lay the kimono collar along the juban's with two fingers from the shoulder down, and let go only when the tie holds both.
todo-obi_lower_edge = height of the obi
    .over = Set the lower edge of the obi { $amount } higher
    .under = Set the lower edge of the obi { $amount } lower
    .practise = Mark the height with a finger against the hip bone, lay the first turn on it, and look from the side before the second turn is tightened.
todo-drum_height = height of the drum (otaiko)
    .over = Fold the drum (otaiko) { $amount } taller
    .under = Fold the drum (otaiko) { $amount } shorter
    .practise = Fold the drum over a spare cord to your own hand's measure, compare in the mirror, and open it again: ten times without tying off.
todo-tare_length = length of the tail (tare)
    .over = Leave the tail (tare) { $amount } longer
    .under = Leave the tail (tare) { $amount } shorter
    .practise = Lay an index finger along the tail before the obijime is tied and hold the fold there until it is.
todo-obiage_show = width of the obiage
    .over = Let { $amount } more of the obiage show
    .under = Let { $amount } less of the obiage show
    .practise = Fold it on a table to the width that should show, and fold it afresh each time it goes on.
todo-waist_padding = padding at the waist
    .over = Pad the waist { $amount } thicker
    .under = Pad the waist { $amount } thinner
    .practise = Lay the towels out and count them before they go on; write down what she wore when it looked right.
todo-hip_padding = padding at the hip
    .over = Pad the hip { $amount } thicker
    .under = Pad the hip { $amount } thinner
    .practise = Lay the towels out and count them before they go on; write down what she wore when it looked right.

## The message to send: $name is whom it is for

message-hello = Hello { $name },
message-hello-all = Hello,
message-thanks = thank you for the { $count ->
    [one] photo
   *[other] photos
} of your dressing.
message-good = Well done: { $what }. That is just as it should be; keep it so.
message-way = One thing before all others: the photo shows right over left. Was it taken in a mirror? Then all is well. If not, please wrap it again, left over right: the other way is for the dead.
message-way-mirrored = One thing before all others: the photo is said to be from a mirror, yet it shows right over left. Is it from none? Then all is well. If it is from one, please wrap it again, left over right: the other way is for the dead.
message-changes = { $count ->
    [one] One thing to work on:
    [2] Two things to work on, in this order:
   *[other] Three things to work on, in this order:
}
message-one = { $number }. { $title }.
message-practise = To practise: { $how }
message-nothing = I have nothing to ask you to change.
message-nothing-sure = There is nothing sure enough to ask you to change.
message-nothing-read = Nothing could be read of your dressing yet, so I cannot say anything about it.
message-stays = What is still off does not come from your hands: { $faults }. Garment and body allow no more; let us look at both together.
message-skews = Left and right differ: { $skews }. Let us look at both sides together.
message-more = There is more to see; first these.
message-bye = Take your time, and send another photo when you like.

## The photo with its lines. $what is one of the lines, $amount has its unit.

overlay-title = { $title }. { $view }, with the lines as seen and as wanted
overlay-desc = Wanted: { $moves }.
overlay-desc-same = No line that was marked is to be moved.
overlay-seen = as seen
overlay-wanted = as wanted
overlay-scale = { $length } at her middle
overlay-higher = { $what } { $amount } higher
overlay-lower = { $what } { $amount } lower
overlay-left = { $what } { $amount } to her left
overlay-right = { $what } { $amount } to her right
overlay-line-hem = hem
overlay-line-corner = outer corner
overlay-line-edge = outer edge
overlay-line-seam = back seam
overlay-line-seam_top = back seam
overlay-line-fold = fold
overlay-line-tail = tail
overlay-line-drum = lower fold of the drum
overlay-line-obi = obi
overlay-line-obiage = obiage
overlay-line-collars = collars
overlay-line-juban = juban collars
overlay-line-nape = nape
