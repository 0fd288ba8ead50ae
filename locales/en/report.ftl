# The report of a check, its feedback sheet, and the hem as others see it.

report-to-check = Photos and what was seen
report-sheet = Sheet to hand over
report-to-report = The whole report
report-empty = There is nothing to report yet: no photo reads, and nothing was ticked by eye.
report-empty-photo = Put in a photo from the front or from behind and mark floor and crown on it; the other marks follow.
report-empty-eye = Or tick what you saw yourself: causes and cures are told for that alone, too.
report-stranger = No measures of her are known, so the intervals are wide: most lengths are known to some centimetres only. Her stature, or an A4 sheet or a tape in the picture, makes them far narrower.
report-stranger-stature = Only her stature is known, and neither her other measures nor the garment: girths, sleeves and landmarks are those of most people of that height, and what is “planned” is what would be usual for her.
report-untouched = Nobody has moved a mark but floor and crown yet: the lines stand where the plan expects them, or at an edge near there, and what follows is worth no more than that. Look at hem, fold, collars and obi first.
report-by-hand = { $count } of { $all } marks set by hand
report-photos = As seen and as wanted
report-marks = To the marks
report-unread = Photos that cannot be read yet
report-unread-marks = Floor and crown are not marked yet.
report-all = Everything that was read
report-fault = What
report-off = Off by

## What others see

seen-title = What others see
seen-done = The hem of the dressing as it was done, before a stage, close before her and in a picture: how high on the leg it is seen, and how much of it shows.
seen-planned = The hem of this dressing before a stage, close before her and in a picture: how high on the leg it is seen, and how much of it shows.
seen-own = from your place
seen-own-how = For another place, type where the eye is.
seen-eye = Eye above the floor
seen-distance = Distance from her
seen-range = { $low } to { $high }
seen-look = Look from there

## The feedback sheet

sheet-title = What to work on
sheet-about = For { $name }
sheet-png = Picture to send (PNG)
sheet-how = One page to hand over: the photo with its lines, at most three things in order, and what is well done.
sheet-undecided = The face is covered on what leaves the studio, since nobody has said yet whether it may show.
sheet-to-faces = Decide about the faces
sheet-faces = Faces
sheet-faces-how = The box is painted into the picture itself: nothing under it is left on the sheet or in the file to send. Drag it, or use the arrow keys, with Shift for its size; then save.
sheet-face-hide = Hide the face
sheet-face-show = Show the face
sheet-face-box = Box over the face: arrow keys move it, with Shift they change its size
sheet-face-left = From the left
sheet-face-top = From the top
sheet-face-width = Width
sheet-face-height = Height
sheet-face-number = “{ $typed }” is not a share of the picture; write { $low } to { $high } %
sheet-face-save = Save the box
sheet-face-undecided = not decided yet: covered
sheet-face-covered = covered
sheet-face-shown = shows
sheet-message = Message to send
sheet-message-how = Plain text, without any measure of the body. Change it as you like before you send it.
sheet-copy = Copy
sheet-copied = Copied.
sheet-copy-self = It is selected: copy it with the keyboard or the menu.
sheet-text = As a text file
