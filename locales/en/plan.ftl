# What is said of a plan: wishes met or missed, what holds them, ways out, and worth.

check-line = { $what }: { $value } ({ $interval }), wanted { $range }: { $verdict }
check-met = met
check-nearly-met = met, within a few millimetres

binding-low = { $decision }: can go no lower; each cm would give { $gain }
binding-high = { $decision }: can go no higher; each cm would give { $gain }
binding-locked = { $decision }: kept where you set it; each cm would give { $gain }
rival = { $what }: would move { $cost } further out for each cm gained

## Ways out

way-out-enough = { $remedy } would meet it
way-out-left = { $remedy } leaves { $left } missing
remedy-let_out_sides = letting the sides out { $amount } all round
remedy-let_out_yuki = letting sleeve and shoulder out { $amount } on each side
remedy-wider_garment = a garment { $amount } wider all round
remedy-narrower_garment = a garment { $amount } narrower all round
remedy-longer_garment = a garment { $amount } longer
remedy-shorter_garment = a garment { $amount } shorter
remedy-longer_yuki = a garment with { $amount } more yuki
remedy-shorter_yuki = a garment with { $amount } less yuki
remedy-more_waist_padding = padding { $amount } thicker at the waist than the standard allows
remedy-more_hip_padding = padding { $amount } thicker at the hip than the standard allows
remedy-lower_koshihimo = tying the waist tie { $amount } lower than the standard allows
remedy-higher_koshihimo = tying the waist tie { $amount } higher than the standard allows
remedy-more_take_up = taking up { $amount } more under the chest tie
remedy-lower_obi = setting the obi { $amount } lower than the standard allows
remedy-higher_obi = setting the obi { $amount } higher than the standard allows
remedy-shift_back_seam = letting the back seam shift { $amount } further at the hip

## Worth wearing: the reason in one line

cut-narrow = { $amount } too narrow round the hip
cut-wide = { $amount } too wide round the hip
cut-short = garment { $amount } short
cut-long = garment { $amount } long
cut-sleeves_short = sleeves { $amount } short
cut-sleeves_long = sleeves { $amount } long
reason-cut = { $cut }: { $rest }
reason-still = { $what } still { $miss }
reason-off = { $what } { $miss }
reason-then-met = then all is met
reason-as-usual = all is met in the usual way
reason-nearly-met = all is met but for a few millimetres
reason-all-met = all is met
