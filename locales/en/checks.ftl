# The pages of a check: begun from a plan or for a stranger, its photos, what the eye saw.

checks-title = Checks
checks-what = After dressing: photos from the front and from behind, a few marks on them, and what the eye saw. Sunbu reads them in centimetres, tells what is off and why, and what to change first.
checks-none = There are no checks yet.
checks-search = Search title, person or garment
checks-from-plan = Check a kept plan
checks-new = A stranger’s photo
checks-of-this = Check the dressing
checks-begin = Begin
checks-stranger = a stranger
checks-no-photo = no photo yet
checks-erase-what = The check goes with its photos, marks and everything read from them. Nothing of it can be brought back.
checks-plan = the plan
checks-unread = This check no longer reads; its photos can be looked at, and it can be erased

## A stranger

checks-new-how = For a photo that somebody sent in, with no measures known. What is read has wider intervals; proportions are judged all the same.
checks-new-stature = If she told it. With it, or an A4 sheet or a tape in the picture, lengths are far surer.

## Photos

checks-photos = Photos
checks-photos-how = The whole figure from crown to floor, the lens at hip height and as far away as the room allows. A sheet of A4 stood upright at the feet settles the scale. Place and name in the file are left out before it is kept.
checks-side-front = Hem, front cover, fold, collars, obi and obiage are read from it.
checks-side-back = Back seam, nape, drum and tail are read from it.
checks-side-right = Where the outer collar ends; asked for when the front does not show it.
checks-left = A photo from her left, too
checks-choose = Choose or take the photo
checks-send = Send
checks-sending = On its way …
checks-mark = Mark
checks-marks-none = not marked yet
checks-marks = { $count ->
    [one] one mark
   *[other] { $count } marks
}
checks-marks-unread = The marks no longer read; take the photo anew
checks-replace = Another photo
checks-replace-what = It takes the place of this one, whose marks go with it.
checks-photo-erase = Erase the photo
checks-side-taken = there is another photo of this side meanwhile; it was kept, and this one was not. To replace it, use “Another photo” below it.
checks-report = What it says

## What the eye saw

checks-eye = Seen by eye
checks-eye-how = What no mark can show. Tick what you see; it goes into the same list as what is measured, with causes and cures.
checks-eye-count = { $count ->
    [one] one seen
   *[other] { $count } seen
}
checks-eye-save = Save what was seen
checks-eye-stale = Somebody saved other ticks meanwhile. Below both are ticked; look at them and save again.
checks-eye-theirs = saved meanwhile
checks-eye-mine = ticked by you
