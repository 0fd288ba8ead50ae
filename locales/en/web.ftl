# What the studio's pages say.

## The frame of every page

page-skip = Skip to the content
page-menu = Menu
page-menu-home = Start
page-menu-people = People
page-menu-garments = Garments
page-menu-plans = Plans
page-menu-checks = Checks
page-menu-rules = House rules
page-menu-settings = Settings
page-foot = Measures and plans stay on this machine; nothing is sent anywhere.
page-done-saved = Saved.
page-done-added = Added.
page-done-saved-twin = Saved. Another entry has the same name; both are kept. Where you choose between them, a length stands beside the name.
page-done-added-twin = Added. Another entry has the same name; both are kept. Where you choose between them, a length stands beside the name.
page-done-erased = Erased, with everything that belonged to it.
page-done-kept = The plan is kept.
page-done-reset = The customary standard is back in force.

## Words used on many pages

edit = Edit
erase = Erase
save = Save
cancel = Cancel
search = Search
search-none = Nothing found for “{ $sought }”.
met = met
mark-unlikely = unlikely: tape again
mark-moved = moved to keep the order of the body
col-measure = Measure
col-part = Part
col-value = Value
col-interval = 9 times in 10
col-origin = From
col-wish = What is seen
col-wanted = Wanted
col-met = Met?
col-decision = What the hands do
col-usual = Usual
name-told-apart = { $name } ({ $telling })
deviation-of = { $what }: uncertainty
erase-title = Erase { $name }?
erase-yes = Yes, erase
erase-no = No, go back

## Forms

field-name = Name
field-sex = Completed from the table of
field-note = Note
field-kind = Kind
field-cloth = Cloth
field-mitake_from = Where the length starts
form-errors = { $count ->
    [one] One entry needs another look; everything you typed is still here
   *[other] { $count } entries need another look; everything you typed is still here
}
form-erased-meanwhile = This was erased in another window while you were typing. What you typed is still here: save it as a new entry, or cancel.
conflict-title = Saved in two windows
conflict-how = Another window saved this after you opened the form. Nothing is lost: below are both versions of everything that differs. A line that only one window changed is chosen already; where both did, choose, then save.
conflict-caption = Only the lines that differ are shown.
conflict-field = Entry
conflict-mine = Yours
conflict-theirs = The other one
conflict-empty = (left empty)
conflict-choose = Both windows changed this; choose which one to keep
conflict-save = Save what is chosen
conflict-leave = Leave the other one as it is

## Start

home-title = What is to be done?
home-what = Tape the person, enter the garment, and see how it will fall before the first tie is tied.
home-measure = Measure a person
home-measure-how = { $count ->
    [0] Stature and hip are enough to begin; every further measure makes the plan surer.
    [one] There is one person. Stature and hip are enough to add another.
   *[other] There are { $count } people. Stature and hip are enough to add another.
}
home-enter = Enter a garment
home-enter-how = { $count ->
    [0] Its length and its width at the back are enough to begin.
    [one] There is one garment. Length and back width are enough to add another.
   *[other] There are { $count } garments. Length and back width are enough to add another.
}
home-plan = Plan a dressing
home-plan-later = As soon as there is a person and a garment.
home-check = Check
home-check-how = { $count ->
    [0] After dressing, see on a photo what is off, why, and what to change first.
    [one] After dressing, see on a photo what is off, why, and what to change first. One check is here.
   *[other] After dressing, see on a photo what is off, why, and what to change first. { $count } checks are here.
}
home-check-open = Open the checks
home-person = Who is dressed
home-garment = In what
home-recent = Plans made last

## People

people-title = People
people-new = Add a person
people-none = Nobody is here yet. Stature and hip are enough to begin.
people-search = Search by name or note
people-form-how = Only name, stature and hip are needed; leave empty what was not taped. Write lengths as you like: 161, 161.5 cm, 4 shaku 2 sun 5 bu, 4尺2寸5分, 5 ft 3 in. After ± you may say how far the tape may be off.
people-erase-what = All measures, notes and saved plans of this person are erased for good. Backups made before still hold them: make a new one and delete those.
person-first = Needed
person-telling = Most telling
person-telling-why = Each of these makes the plan much surer for little trouble.
person-more-heights = More heights above the floor
person-more-girths = More girths
person-more-lengths = Breadths, arm and hand
person-heights = Heights above the floor
person-girths = Girths
person-lengths = Breadths, arm and hand
person-worth = Worth wearing?
person-plan-with = Plan with
person-unlikely = Worth taping again
person-measures = Measures
person-measures-how = What was not taped is completed from people of like build; the interval says how sure that is.
person-plans = Kept plans

## Garments

garments-title = Garments
garments-new = Add a garment
garments-none = No garment is here yet. Its length and its width at the back are enough to begin.
garments-search = Search by name or note
garments-form-how = Lay the garment flat and measure finished widths, seam to seam. Leave empty what was not measured; it is completed by the tailors' proportions and marked. Write lengths as you like: 161, 4 shaku 2 sun 5 bu, 4尺2寸5分.
garments-erase-what = The garment is erased for good. Plans kept with it stay, with the garment as it was in them.
garment-first = What the wrap hangs on
garment-first-least = Needed are the length and one of the two widths at the hip, back or front.
garment-more = Every other part
garment-suits = Whom does it suit?
garment-plan-for = Plan for
garment-unusual = Unusual about it
garment-parts = Parts
garment-parts-how = Parts marked △ were not measured: the rule that gave them and its source stand beside them.
garment-cut-for = By its length and widths it was cut for a stature of about { $height } and a hip of about { $hip }.

## Worth wearing

worth-garments-title = What suits { $name }?
worth-people-title = Whom does { $name } suit?
worth-again = Rank again
worth-nothing = There is nothing to rank yet.
worth-left = Left out: these entries cannot be read or contradict themselves; open one to mend it

## What is kept but cannot be read

unread-title = Cannot be read
unread-why = { $count ->
    [one] One field is kept in a way that cannot be read. The form shows what stands there and what is wrong.
   *[other] { $count } fields are kept in a way that cannot be read. The form shows what stands there and what is wrong.
}
unread-form = This entry is kept, but cannot be read as it stands. Every field shows what is kept; mend those that are told and save.
unread-left-out = No form has this field: copy what you need. It is left out when you save.
unread-mend = Mend it
unread-nameless = Without a name, number { $number }
unread-occasion = an occasion that nobody knows
unread-dresser = The entry of { $name }, whose hands were chosen to dress, cannot be read.

## A plan

plan-title = { $person } in { $garment }
plan-open = Open the plan
plan-occasion = Occasion
plan-all-met = All { $count } wishes are met.
plan-missed = { $missed } of { $count } wishes missed:
plan-miss = { $what } { $miss }
plan-group-hem = Hem and front edges
plan-group-width = Round the hip
plan-group-tie = Waist tie and fold
plan-group-collar = Nape and collars
plan-group-obi = Obi
plan-group-padding = Padding
plan-usual = usual { $usual }, limits { $range }
plan-outside = outside the limits
plan-lock = keep
plan-redraw = Redraw
plan-ask = Ask the plan
plan-ask-how = “Ask the plan” sets every number that is not marked “keep”.
plan-lost = The studio does not answer. Is it still running? Your numbers are kept in the address of this page.
plan-unlike = Not drawn: a number below cannot be taken. What is shown is another dressing.
plan-figure = Figure, front and back
plan-notes = Numbers in the figure
plan-front = Front
plan-back = Back
plan-numbers = What will be seen
plan-ways = What is missed, and the ways out
plan-go-missed = What is missed
plan-met = { $count ->
    [one] One wish is met
   *[other] { $count } wishes are met
}
plan-nothing-missed = Nothing that is wanted is missed.
plan-held-by = Held by:
plan-rivals = To meet it, these would have to give way:
plan-rival = { $what }: { $cost } for each cm
plan-ways-out = Ways out:
plan-meets-it = “Ask the plan” meets it.
plan-ways-later = The ways out are being worked out …
plan-no-way-out = No single change within reason frees it.
plan-steps = Step by step
plan-hands-own = Finger, index finger and fist are those of { $name }. Whose hands dress can be chosen in the settings.
plan-hands-worn = Finger, index finger and fist are taken from the person who is dressed. Choose in the settings whose hands dress.
plan-save = Keep this plan
plan-save-title = Name of the plan
plan-keep = Keep the plan
plan-keep-name = Give the plan a name, so that it can be found again.
plan-keep-long = The name is too long; 80 characters are the most.
plan-keep-numbers = The plan is not kept yet: a number above cannot be read.
plan-print = Sheet for printing
plan-picture = Picture for the wall
plan-history = Kept plans of these two

## Kept plans and paper

saved-title = Plans
saved-none = No plan has been kept yet. Open a plan, name it, and keep it.
saved-read-only = Kept on { $day }; occasion: { $occasion }. Person, garment and house rules are shown as they were then.
saved-reopen = Plan again from here
saved-print = Sheet for printing
saved-gone = The person or the garment has been erased since, so it cannot be planned again from here.
saved-erase-what = The kept plan is erased for good; person and garment stay.
saved-do = What the hands do
saved-search = Search by plan, person or garment
print-button = Print
print-back = Back to the plan
print-scale = Figure at 1 : { $scale }
print-date = printed { $day }
print-occasion = Occasion: { $occasion }

## House rules

rules-title = House rules
rules-what = What counts as well dressed, and how it is usually done. The studio starts from customary practice and may keep its own copy: schools and houses differ.
rules-own = The studio's own copy is in force.
rules-customary = The customary standard is in force. The first change makes a copy of the studio's own.
rules-every = Every occasion
rules-toml = The whole standard as text (TOML)
rules-toml-how = Lengths are in centimetres. Everything is checked before it is taken.
rules-toml-label = Standard
rules-toml-wrong = This text cannot be taken yet; it is still here as you typed it
rules-reset = Back to the customary standard
rules-reset-what = The studio's own copy of the rules is erased and the customary standard holds again. Kept plans stay as they are.
rules-reset-yes = Yes, back to the customary one
rules-meanwhile = Another window changed the house rules after this page was opened. Nothing is lost: what you typed is still here. Save again, and it holds where the two differ:
rules-meanwhile-field = “{ $theirs }” in the other window, “{ $mine }” here
rules-meanwhile-theirs = As the other window left them
rules-meanwhile-reset = Another window changed the house rules after this page was opened. Look at them once more before they are taken back.
rules-how = Write lengths as you like: 7, 7 cm, 1 sun 8 bu, 1寸8分; they are kept and shown in centimetres. A bound may depend on stature: 0.17 stature + 2. An empty bound is open. A row left wholly empty is no wish.
rules-how-occasion = A row here is the occasion's own only where it differs from the rule for every occasion. A row left wholly empty is no wish on this occasion, whatever holds on every other; a usual value left empty is that of every occasion.
rules-without = No wish on this occasion. Write the numbers of every occasion to have that wish back.
rules-stature = stature
rules-wishes = What is wanted
rules-usual = How it is usually done
rules-low = Least
rules-high = Most
rules-weight = Weight
rules-source = Source
rules-plus = Usual
rules-soft = Usual, soft cloth
rules-cotton = Usual, cotton
rules-stiff = Usual, stiff cloth
rules-least = Least
rules-most = Most
rules-spread = Freedom
rules-hands = Hands off by
rules-from-floor = In cm; heights are above the floor.
rules-from-hip-bone = In cm above the hip bone.
rules-no-amount = “{ $typed }” is no length here; write 7, 1 sun 8 bu, 1寸8分, or 0.17 stature + 2
rules-no-number = “{ $typed }” is no number from { $low } to { $high }
rules-no-length = “{ $typed }” is no length from { $low } to { $high } cm; write 7, 1 sun 8 bu or 1寸8分
rules-low-above-high = “{ $typed }” is above the most that is wanted; exchange the two or open one of them

## Settings

settings-title = Settings
settings-language = Language
settings-hands = Whose hands dress
settings-hands-what = Steps say lengths against the dresser's own hand. Enter the dresser among the people, with finger and hand measures, and choose her here.
settings-dresser = Dresser
settings-dresser-none = Nobody: use the hand of the person who is dressed

## What can go wrong

error-home = Back to the start
error-not-found = There is nothing at this address. It may have been erased, or the address is mistyped.
    .title = Not found
error-method = This address only takes a form that was sent from its own page.
    .title = Not this way
error-unread = Nothing is drawn, because it would not be what the address says:
    .title = This cannot be drawn
error-kept = The entries kept here contradict themselves under the present rules. Edit them to go on:
    .title = These entries do not go together
error-unreadable = This entry is kept, but cannot be read as it stands. Nothing of it is lost: its form shows every field as it is kept.
    .title = This entry cannot be read
error-plan = This plan is kept, but cannot be read any more, so it is not shown: drawn with other numbers it would be another plan.
    .title = This plan cannot be read
error-standard = The studio's own house rules no longer stand under the present checks, and plans need them. Mend them as text, or go back to the customary standard.
    .title = The house rules do not stand
error-ours = The studio could not do this. What was saved before is safe. Try again; if it happens again, look at what the program wrote where it was started.
    .title = That went wrong
error-in-use = Another program is working on the same store. Close it and try again; nothing was changed.
    .title = The store is in use
error-traces = It is erased from every page, but traces may remain in the file, because another program holds it. Close every program that uses it, then open the studio once.
    .title = Erased, but not yet without a trace
error-host = This studio only answers to the names of its own machine. Open it as http://localhost with its port.
error-elsewhere = Refused: the form came from another site, not from this studio.
error-too-long = Refused: that is more than a form of this studio can hold.
