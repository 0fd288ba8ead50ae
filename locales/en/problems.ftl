# What is wrong with an entry, and the way out. $typed is what stood there.

problem-at = { $place }: { $sentence }
problem-missing = is needed and not given; measure it and enter it
problem-missing-word = is needed and not given; enter it
problem-missing-one-of = is needed and not given; enter it, or instead { $others }
problem-unreadable = { $why }
problem-wrong-shape = “{ $typed }” does not belong here; { $expected }
problem-out-of-range = “{ $typed }” is outside the allowed { $low } to { $high } cm; check the tape and the unit
problem-number-out-of-range = “{ $typed }” is outside the allowed { $low } to { $high }{ $unit }; check what was given
problem-unknown-field = there is no such field here; the fields are { $others }
problem-unknown-choice = “{ $typed }” is not one of the choices; write one of these: { $others }
problem-no-choice = is needed and not given; write one of these: { $others }
problem-together = { $sentence } (together with { $others })
list-or = { $first } or { $next }
problem-bad-text = “{ $typed }” cannot be kept; write up to { $most } characters, without control characters
problem-bad-line = “{ $typed }” cannot be kept; write up to { $most } characters on one line, without control characters
problem-form = { $why }
problem-form-at = “{ $typed }” cannot be read: { $why }
problem-form-length = “{ $typed }” cannot be read; a length with a unit stands in quotes: { $better }
problem-form-text = “{ $typed }” cannot be read; a text stands in quotes: { $better }
problem-form-no-value = “{ $typed }” cannot be read; write a value after the equals sign, or take the line out
problem-form-no-equals = “{ $typed }” cannot be read; write it as name = value
problem-form-heading = “{ $typed }” cannot be read; a heading ends with a bracket, as in [person] or [[garments]]
problem-form-quote = “{ $typed }” cannot be read; the quotes do not close
problem-form-twice = “{ $typed }” is given a second time; keep one of the two
problem-line = line { $line }
problem-not-text = is no UTF-8 text but seems to be { $seems }; save it as UTF-8
problem-too-much = is larger than any real one; at most { $most } MB are read
problem-too-many = has more than the { $told } problems told; mend those and try again
encoding-utf-16 = UTF-16 text
encoding-none = no text at all
encoding-other = text in another encoding, such as Shift JIS
expected-length = write a length such as 161, "4尺2寸5分" or { "{" } value = 161, sd = 0.5 { "}" }
expected-text = write a text in quotes
expected-table = write a table, headed [like this]
expected-tables = write tables, each headed [[garments]]
expected-texts = write texts in quotes between brackets, such as ["fold_wrinkled", "obiage_untidy"]
expected-truth = write true or false
expected-number = write a number
expected-size = write a width and a height in whole pixels, such as [3024, 4032]
expected-place = write a place as [x, y] in pixels from the upper left corner, such as [1510, 3830]
expected-mark = write a place as [x, y] in pixels, or { "{" } at = [x, y], unsure = true { "}" }
expected-sheet = write the four corners of the sheet, each as [x, y]: upper left, upper right, lower right, lower left
expected-lines = write a line as its two ends, such as [[200, 300], [205, 3600]]; where several are taken, a list of them
expected-pairs = write a list of pairs of lines, each line as its two ends
expected-tape = write a tape as { "{" } ends = [[700, 3800], [702, 2900]], length = 90 { "}" }, the lower end first

## Contradictions in a garment

problem-contradiction-crown-not-above-floor = the crown must lie well above the floor, by at least 15 % of the picture's height; were the two exchanged?
problem-contradiction-mark-not-in-view = this place cannot be seen from this side; leave it out, or choose the side that the photo shows
problem-contradiction-marks-do-not-fit = no lens sees these marks so; check them one by one, floor and crown first
problem-contradiction-marks-of-another-picture = the marks belong to a picture of other proportions than this photo, which has { $photo_width } × { $photo_height } px upright; name the photo that was marked, whole
problem-contradiction-range-empty = the least, { $low } cm, lies above the most, { $high } cm; exchange them or leave one out
problem-contradiction-usual-outside = the usual value, { $usual } cm, lies outside its limits of { $low } to { $high } cm; change it or the limits
problem-contradiction-weight-range = a weight lies from 0 to { $most }
problem-contradiction-wish-and-without = a wish of the occasion stands under this name, too; leave one of them out
problem-contradiction-yuki-split = yuki is { $yuki } cm but shoulder width (katahaba) and sleeve width (sodehaba) add up to { $sum } cm; tape all three again, or leave the doubtful one out
problem-contradiction-sodetake-split = the sleeve drop (sodetake) is { $sodetake } cm but joint (sodetsuke) and open edge (furi) add up to { $sum } cm; tape all three again, or leave the doubtful one out
problem-contradiction-sodetsuke-over-sodetake = the joint (sodetsuke), { $sodetsuke } cm, is longer than the whole sleeve (sodetake), { $sodetake } cm; tape both again from the shoulder ridge
problem-contradiction-sodeguchi-over-sodetake = the hand opening (sodeguchi), { $sodeguchi } cm, is longer than the whole sleeve (sodetake), { $sodetake } cm; tape both again from the shoulder ridge
problem-contradiction-aizuma-over-okumi = the overlap is { $aizumahaba } cm wide at the collar end (aizumahaba) and { $okumihaba } cm at the hem (okumihaba); it narrows upwards, so the two may have been exchanged
problem-contradiction-collar-end-above-garment = the collar would end { $erishita } cm above the hem, but the back is only { $mitake } cm long; tape erishita from the hem along the front edge to the end of the collar
problem-contradiction-collar-end-above-okumi = the collar would end { $erishita } cm above the hem, above the point of the okumi at { $okumi } cm; tape erishita from the hem along the front edge, and mitake again
problem-contradiction-yuki-impossible = shoulder width (katahaba) and sleeve width (sodehaba) make a yuki of { $value } cm; { $low } to { $high } cm is possible
problem-contradiction-katahaba-impossible = yuki and sleeve width (sodehaba) leave a shoulder width (katahaba) of { $value } cm; { $low } to { $high } cm is possible
problem-contradiction-sodehaba-impossible = yuki and shoulder width (katahaba) leave a sleeve width (sodehaba) of { $value } cm; { $low } to { $high } cm is possible
problem-contradiction-sodetsuke-impossible = sleeve drop (sodetake) and open edge (furi) leave a joint (sodetsuke) of { $value } cm; { $low } to { $high } cm is possible
problem-contradiction-sodetake-impossible = joint (sodetsuke) and open edge (furi) make a sleeve drop (sodetake) of { $value } cm; { $low } to { $high } cm is possible
problem-contradiction-heights-order = { $lower } cm cannot lie below the { $upper } cm of the other height; tape both again, or leave one out
problem-contradiction-neck-points = side neck point at { $side } cm and back neck point at { $back } cm are more than { $step } cm apart; tape both again, or leave one out
problem-contradiction-other-table = the population table in use is of the other sex
problem-contradiction-table-degenerate = the population table cannot tell the taped measures apart; use another one
problem-contradiction-given-twice = this is another name of a measure that is given too; leave one of them out
problem-contradiction-garment-and-garments = write one [garment] or several [[garments]], not both

## What is unusual about a garment and will trouble its wearer

warning-shoulder-drag = the shoulder is { $difference } cm wider than the back panel; over 3.8 cm the allowance inside the side seam drags
warning-shoulder-drag-slight = the shoulder is { $difference } cm wider than the back panel; up to 3 cm is best, 3.8 cm still good
warning-erishita-long = the collar ends { $erishita } cm above the hem, over the customary 83 cm; the waist tie may miss it, and then the front does not settle
warning-dakihaba-wide = the chest width (dakihaba), { $dakihaba } cm, is wide for a front width (maehaba) of { $maehaba } cm; the collar may bag at the chest
warning-dakihaba-narrow = the chest width (dakihaba), { $dakihaba } cm, is narrow for a front width (maehaba) of { $maehaba } cm; the collar may not settle
warning-neck-deep = the neck opening sits { $finished } cm behind the shoulder ridge, kurikoshi and tsukekomi together; up to 3.8 cm is customary

## Why a text is not a length

length-error-empty = no length was given; write one such as 161 cm or 4尺2寸5分
length-error-too_long = the text beginning “{ $text }” is too long to be a length; write only the length, such as 161 cm
length-error-not_a_number = “{ $text }” cannot be read as a length; write it like 161, 161.5 cm, 4尺2寸5分 or 5 ft 3 in
length-error-ambiguous_comma = the comma in “{ $text }” can be read in two ways; leave it out between thousands, or write decimals with a point
length-error-missing_unit = a number in “{ $text }” has no unit; write the unit after every number, as in 4 shaku 2 sun 5 bu
length-error-missing_number = in “{ $text }” there is no number before { $unit }; write one, as in 2 { $unit }
length-error-unknown_unit = “{ $word }” in “{ $text }” is not a unit known here; use cm, mm, m, ft, in, or jo, shaku, sun, bu, rin (丈, 尺, 寸, 分, 厘)
length-error-mixed_units = “{ $text }” mixes { $first } and { $second }; write the length in one of them only
length-error-repeated_unit = “{ $text }” gives { $unit } twice; give each unit once
length-error-out_of_order = “{ $text }” gives { $second } after { $first }; write the larger unit first
length-error-subunit_too_large = “{ $text }” gives more { $unit } than there are in one { $outer }; write fewer than { $limit } { $unit } after { $outer }
length-error-fraction_not_last = “{ $text }” gives a fraction of { $unit } and then a smaller unit; only the last number may have a fraction
length-error-too_large = “{ $text }” is longer than 100 m; check the unit and the number of digits
length-error-negative = “{ $text }” is below zero; this length is zero or more

## What is unusual about a body

unlikely = { $what }: { $value } is taped, but the other measures lead one to expect { $expected }; tape it again, it is kept as it is

## Units as a length problem names them

length-unit-m = m
length-unit-cm = cm
length-unit-mm = mm
length-unit-ft = ft
length-unit-in = in
length-unit-jo = jo
length-unit-shaku = shaku
length-unit-sun = sun
length-unit-bu = bu
length-unit-rin = rin
length-unit-mo = mo
