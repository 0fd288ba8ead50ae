# The page on which a photo is marked.

marking-title = Marks: { $view }
marking-no-script = Marking needs a browser that runs scripts. Without one the photo and the list of its marks can be looked at here.
marking-next = Next: { $view }
marking-back = Back to the check

## What to do next

marking-tap-floor = 1 of 2: tap the floor at the feet.
marking-tap-crown = 2 of 2: tap the crown of the head.
marking-tap-mark = Tap where this mark belongs.
marking-tap-sheet-1 = Tap the sheet’s upper left corner.
marking-tap-sheet-2 = Tap the sheet’s upper right corner.
marking-tap-sheet-3 = Tap the sheet’s lower right corner.
marking-tap-sheet-4 = Tap the sheet’s lower left corner.
marking-tap-tape-1 = Tap the lower end of the tape.
marking-tap-tape-2 = Tap the upper end of the tape.
marking-ready = Now look at the marks one by one, and drag those that are off. The others follow; one that is right stays where it is when you say so.

## The picture and its tools

marking-tools = Tools for the picture
marking-picture = The photo with its marks
marking-undo = Undo
marking-smaller = Smaller
marking-larger = Larger
marking-keys = With keys: arrows move the chosen mark by one pixel of the photo, with Shift by ten, without going to an edge; Enter says that it is right where it stands; Ctrl+Z takes the last change back.
marking-legend = What the shapes mean
marking-by-hand = set by hand
marking-follows = at an edge, follows the others
marking-guess = a guess: not read until you place it or say that it is right
marking-unsure = unsure
marking-left-out = left out
marking-not-in-sight = not in sight
marking-not-yet = not set yet

## One mark

marking-marks = Marks
marking-call-unsure = Call it unsure
marking-call-sure = It is right here
marking-let-follow = Let it follow again
marking-leave-out = Leave out
marking-again = Place again
marking-by-hand-now = Place by hand

## What else is known in the picture

marking-known = How it is set, and what else is known
marking-known-how = None of it is needed. A sheet or a tape makes all lengths surer, most of all where her height is not known.
marking-snapping = Marks go to edges
marking-snapping-how = A mark that you drag goes on to the nearest strong edge, a centimetre away at most. Turn it off where it takes the wrong one.
marking-mirrored = Taken in a mirror
marking-mirrored-how = Left and right change places.
marking-lens-height = Height of the lens above the floor
marking-lens-height-how = In cm, shaku or inches; empty if nobody knows.
marking-sheet = A sheet of A4
marking-sheet-how = Stood upright on the floor at the feet, long side up. Tap its four corners.
marking-sheet-set = Mark the sheet
marking-sheet-drop = No sheet
marking-tape = A tape
marking-tape-how = Held upright with its zero on the floor at the feet. Tap two places on it and type how much it reads between them.
marking-tape-set = Mark the tape
marking-tape-drop = No tape
marking-tape-length = How much it reads between the two

## Saving

marking-saving = Saving …
marking-saved = Saved
marking-lost = The studio does not answer. Your marks are kept in this browser and are sent as soon as it does.
marking-gone = This photo is no longer in the studio, so its marks cannot be saved.
marking-nonsense = These marks could not be read, and nothing was saved. Load the page anew.
marking-stale = Somebody saved other marks of this photo meanwhile.
marking-stale-how = Yours are still here, in this browser. Which of the two are to be kept?
marking-stale-mine = Keep mine
marking-stale-theirs = Take theirs
