# What the command line says. Long texts are shown as they stand here, line by line.

## Help

cli-usage = Usage:
cli-commands = Commands
cli-options = Options
cli-arguments = Arguments
cli-about = Sunbu plans how a kimono falls on a person, before the first cord is tied.
cli-long =
    Sunbu plans how a kimono falls on a person, before the first cord is tied.

    You write down what the tape says of a person and of a garment in a case file.
    Sunbu completes what was not taped, tells how the garment fits, plans every
    cord and edge in numbers, and says what cannot be met and what would free it.

    Lengths are read as people write them: 161, "161 cm", "4尺2寸5分",
    "4 shaku 2 sun 5 bu", "5 ft 3 in". Shaku are kujira-shaku unless the file says
    shaku = "kane". Give a deviation as {"{"} value = 161, sd = 0.5 {"}"}.
cli-example =
    A worked example: see what a case looks like, keep it, plan it, draw it.

      $ sunbu help case
      $ sunbu plan case.toml
      $ sunbu figure case.toml -o figure.svg

    Exit codes: 0 done; 1 the answer is "cannot be met", reasons in the text; 2 the
    input is bad, everything wrong with it told at once.
cli-open = Open your studio in the browser
cli-open-long =
    People, garments, plans with sliders that redraw the figure, worth wearing,
    paper. The studio listens on this machine alone; nothing leaves it. Everything
    is one file; it is made when there is none. Ctrl-C closes the studio.
cli-open-example =
    A worked example: a studio of your own on a stick.

      $ sunbu open --studio stick/studio.sunbu
cli-demo = Open a studio on invented people and garments
cli-demo-long =
    To look around: fifteen people of very different builds and forty garments,
    many of them second-hand and ill-fitting. They lie in a temporary file that is
    gone when the studio is closed, or in the empty one that you name.
cli-demo-example =
    A worked example: on a free port, without opening a browser.

      $ sunbu demo --port 0 --no-browser
cli-backup = Copy the studio into one file
cli-backup-long =
    The copy is read back and checked before the command says that it is done. The
    studio may stay open meanwhile.
cli-backup-example =
    A worked example:

      $ sunbu backup march.sunbu
cli-restore = Put a backup in the place of the studio
cli-restore-long =
    The backup is checked first. What the studio holds now is replaced: copy it with
    "sunbu backup" if you may want it again. Close the studio before.
cli-restore-example =
    A worked example:

      $ sunbu restore march.sunbu
cli-erase = Erase one person with everything of theirs
cli-erase-long =
    The person, their measures and their plans are erased, and the file is written
    anew without them. Backups made before still hold them. Without --yes it only
    says what would be erased.
cli-erase-example =
    A worked example:

      $ sunbu erase Chiyo --yes
cli-plan = Plan how one person is best dressed in one garment
cli-plan-long =
    The page gives, in this order: how the garment can be made to look and why no
    better; what was taped and what was completed; every wish of the standard with
    its value, its 90 % interval and the wanted range; for what is missed, which
    limit holds it, which other wish would suffer, and how far each way out would
    help; then the steps of dressing with their numbers in centimetres and against
    body or hand, and the cautions that belong to them.
cli-plan-example =
    A worked example: plan for a stage, with the waist tie set at 90 cm and the
    rest left to the planner; the same as a JSON document; the hem as a front seat sees it.

      $ sunbu plan case.toml --occasion stage --set koshihimo_back=90
      $ sunbu plan case.toml --occasion stage --set koshihimo_back=90 --json
      $ sunbu plan case.toml --occasion stage --seen-by below_stage

    --seen-by takes below_stage, neighbour, camera, or an eye by its height, its
    distance, and how far its own floor lies above hers: 115,300,-120.

    "sunbu help decisions" lists what can be set; "sunbu schema plan" prints the
    schema of the document. Exit code 1 says that some wish cannot be met.
cli-rank = Rank garments for a person, or people for a garment
cli-rank-long =
    Everything is planned, and listed best first with a verdict and, in one line,
    the reason why it is no better: the garments of a case for its person, the
    garments of the studio for one of its people (--person), or its people for one
    of its garments (--garment).
cli-rank-example =
    A worked example: which of these for a formal occasion? What of the studio
    for Aya, by her number there? And whom does the first garment suit?

      $ sunbu rank wardrobe.toml --occasion formal
      $ sunbu rank --person 2
      $ sunbu rank --garment 1

    Exit code 1 says that none of them meets every wish.
cli-figure = Draw the planned dressing to scale, as SVG
cli-figure-long =
    Front and back with the numbers at their places and faults marked by line, sign
    and word: both on a page of A4 for the wall, or one side alone.
cli-figure-example =
    A worked example: the plan for the wall; then the front alone as it falls when
    dressed as usual, with the planned line over it.

      $ sunbu figure case.toml -o sheet.svg
      $ sunbu figure case.toml --view front --show usual -o front.svg
cli-mark = Mark a photo: every place where the plan expects it, brought to the edges
cli-mark-long =
    Give the two places from which all others follow: the floor between the feet and
    the top of the head, in pixels from the upper left corner of the upright photo.
    Every other mark is put where the plan expects it and moved to the nearest strong
    edge of the picture. The marks file is printed, or written with -o. Marks at which
    no edge was found say unsure = true: they are where the plan has them, no more.

    Look at each mark before you check: what the plan expects is no reading. Move it,
    or take it out where the place cannot be seen. A file that is there already is
    written over only with --replace.
cli-mark-example =
    A worked example: mark a photo from the front, then check it.

      $ sunbu mark case.toml --photo f.jpg --view front --floor 1510,3830 --crown 1500,310 -o f.toml
      $ sunbu check case.toml --photo f.jpg --marks f.toml

    "sunbu help photos" tells how to take a photo, "sunbu help marks" what each mark is.
cli-check = Check a finished dressing from photos: faults, causes, what to change first
cli-check-long =
    The marks of the photos are read in centimetres, each with its 90 % interval, and
    held against the plan of the case. The answer gives, in this order: what to change,
    three things at most, in the order of dressing; what is well done; every fault with
    its amount; the causes; what could be behind it instead and what would tell; the
    fewest changes that put all right; left against right; what was not to be seen.

    Several sides of one dressing are checked together: give --photo and --marks once
    for each, in the same order. Nothing is kept and nothing leaves this machine. With
    --stranger nobody's measures are needed: the likeliest body and garment stand for
    them, and the intervals are wider.

    --overlay draws the lines into the photo, which shows the room and all else as it is.
    Before you hand it on, --hide-face lays a plain box over the head; nothing of the
    pixels below is left. Her name is not written into it.
cli-check-example =
    A worked example: two sides; one side with its lines drawn into the photo; a photo sent
    in by somebody 160 cm tall, as a JSON document; the hem as seen from below a stage
    and by an eye 150 cm up and 2 m away.

      $ sunbu check case.toml --photo f.jpg --marks f.toml --photo b.jpg --marks b.toml
      $ sunbu check case.toml --photo f.jpg --marks f.toml --overlay lines.svg
      $ sunbu check --stranger --stature 160 --photo s.jpg --marks s.toml --json
      $ sunbu check case.toml --photo f.jpg --marks f.toml --seen-by below_stage --seen-by 150,200

    --seen-by takes below_stage, neighbour, camera, or an eye by its height, its
    distance, and how far its own floor lies above hers: 115,300,-120.

    Exit code 0: done, and whatever is at fault can be brought into its range. Exit code
    1: some fault stays whatever is changed. "sunbu schema check" prints the schema of
    the document, "sunbu schema marks" that of a marks file.
cli-schema = Print the JSON Schema of a document
cli-schema-long =
    What "--json" prints keeps to these schemas: plan, rank, check, and problems for
    input that is bad; marks is the form of a marks file. Without a name their names
    are listed. Lengths are centimetres.
cli-schema-example =
    A worked example:

      $ sunbu schema plan
cli-help = Help on a command or a topic
cli-help-long =
    Topics: case (an example case file with everything explained, itself a case
    file), measures (of the body), parts (of a garment), decisions (that can be
    set), standard (the wanted ranges, as a file to start your own from), photos (how
    to take and to mark them), marks (the places to mark), faults (that the eye sees).
cli-help-example =
    A worked example: start a case from the example.

      $ sunbu help case

value-case = CASE.toml
value-file = FILE
value-port = PORT
value-lang = LANGUAGE
value-length = LENGTH
value-pixel = X,Y
value-seen-by = WHO|EYE,DISTANCE[,FLOOR]
value-sex = SEX
value-side = SIDE
value-name = NAME
value-occasion = OCCASION
value-set = DECISION=LENGTH
value-topic = TOPIC
value-view = VIEW
value-show = WHAT
arg-case = The case file; - reads it from the standard input
arg-lang = Language of the answer: en, ja; else that of the environment
arg-help = Show this help
arg-version = Show the version
arg-json = Answer with one JSON document
arg-occasion = What for: indoors, formal, stage, everyday, practice; else as in the case
arg-standard = A standard of your own, as "sunbu help standard" prints one
arg-garment = Which garment of the case, by its name or its number from 1
arg-set = Set a decision yourself, such as koshihimo_back=90; may be repeated
arg-view = What to draw: front, back, sheet, sheet-upright; else sheet
arg-show = Dressing to draw: plan, usual (with the planned line over it); else plan
arg-output = Write to this file instead of the standard output
arg-replace = Write over the file of -o when it is there already
arg-person = Rank the studio's garments for this person, by name or number
arg-for-garment = Rank the studio's people for this garment, by name or number
arg-studio = The studio's file; else the one in your folder for data
arg-demo-studio = An empty or new file to keep the demo in; else a temporary one
arg-port = Port on this machine; 0 for any that is free
arg-no-browser = Do not open the browser; the address is printed
arg-backup = The file of the backup
arg-erase = Whom, by name or number
arg-yes = Really do it; it cannot be undone
arg-photo = A photo: JPEG, PNG or WebP; for several sides, once for each
arg-marks = The marks file of a photo; as many as photos, in the same order
arg-overlay = Draw the lines into a photo: FILE.svg or FILE.png; one for each photo, in order
arg-hide-face = Lay a plain box over the head in the photos that are drawn into
arg-seen-by = Somebody who looks at the hem from the front, named or placed; may be repeated
arg-stranger = Somebody unmeasured is shown; no case is needed
arg-stature = Stature of the stranger, if it was told
arg-sex = Which population table stands for the stranger: women, men; else women
arg-side = The side that the photo shows: front, back, right, left (hers)
arg-floor = The floor between the feet, in pixels of the photo, such as 1510,3830
arg-crown = The top of the head, in pixels of the photo, such as 1500,310
arg-mirrored = The photo was taken in a mirror
arg-no-snap = Leave the marks where the plan expects them
arg-schema = The document: plan, rank, check, marks, problems
arg-topic = A command, or: case, measures, parts, decisions, standard, photos, marks, faults

## Topics

topic-measures = Measures of a [person], by key. stature and either hip_girth or fullest_girth are the least; each one more makes the plan surer. Heights are above the floor, barefoot.
topic-parts = Parts of a [garment], by key. mitake and either ushirohaba or maehaba are the least; missing ones are completed by published proportions and flagged.
topic-decisions = Decisions of the hands, for [dressing] in a case or for --set, by key. What you set stays; the planner finds the others.
topic-standard = The customary standard: what is wanted and how it is usually done. Edit a copy and give it with --standard, or put it under [standard] in a case. The occasions are:
topic-photos =
    A photo that can be measured
    ----------------------------

    - Stand 3 m away or more, the lens at the height of her hips, the camera upright.
      She stands straight, feet together, arms a little away from the body.
    - All of her must be in the picture, from the floor at her feet to the crown. Do not
      crop: the middle of the picture is where the lens looked. Send the file itself;
      programs for messages often drop the focal length with the rest.
    - From the front first, then from behind; her right side shows the outer edge.
    - A sheet of A4 stood upright at her feet, long side up, or a tape held upright with
      its zero on the floor makes lengths surer. So does the height of the lens, taped.
    - Ask before you take or send a photo of somebody. What Sunbu writes holds no place,
      hour or name; the file that you gave it keeps what it has.

    The marks file
    --------------

    One file of TOML for each photo. Pixels are [x, y] from the upper left corner of the
    upright picture; left and right in the names of marks are hers. Start from the one
    that "sunbu mark" writes, and correct it in any picture program that shows pixels.

      view = "front"               # front, back, right, left
      size = [3024, 4032]          # the picture whose pixels these are; else the photo's
      mirrored = false             # taken in a mirror
      lens_height = 130            # above the floor; "4 ft 3 in", {"{"} value = 130, sd = 3 {"}"}
      focal_35mm = 26              # as on 35 mm film, where the photo does not say
      seen = ["fold_wrinkled"]     # faults that the eye sees: "sunbu help faults"

      {"["}references]                 # what else has a known size or direction
      sheet = [[700, 3500], [900, 3500], [900, 3785], [700, 3785]]  # A4, upper left first
      tape = {"{"} ends = [[600, 3800], [602, 2900]], length = 90 {"}"}   # lower end first
      uprights = [[[200, 300], [205, 3600]]]    # door frames, each by its two ends

      {"["}marks]                      # "sunbu help marks" lists them
      floor = [1510, 3830]
      crown = {"{"} at = [1500, 310], unsure = true {"}"}   # guessed, behind hair
      hem_left = [1712.5, 3722]

    floor and crown are needed; every other one may be left out, and its length is then
    said to be unseen. "sunbu schema marks" prints the form for other programs.
topic-marks = Places to mark on a photo, for [marks] in a marks file, by key, each with the sides that show it. Left and right are hers.
topic-faults = Faults that the eye sees, for seen in a marks file, by key. What the marks measure is found without being ticked.

## A plan in words

cli-title = { $person } in { $garment }
cli-under = { $occasion }. Standard: { $standard }.
cli-verdict = { $verdict }. { $reason }.
cli-from = Computed from (~ was not taped)
cli-given = { $name }: { $value }, { $origin }
cli-wishes = Wishes (+ met, x missed)
cli-missed = What cannot be met, and what would free it
cli-missed-what = { $what }: { $miss }
cli-held-by = Held by:
cli-rivals = Would suffer if it were met:
cli-ways-out = Ways out:
cli-no-way-out = No single change within reach takes a third off it.
cli-locked = Set by the dresser
cli-set = { $name }: { $value }
cli-steps = Dressing, step by step
cli-hands-of = Fingers and fists are those of { $name }.
cli-own-hands = Fingers and fists are those of the one who is dressed; put yours into the case under [dresser].
cli-garments-for = Garments for { $name }, best first
cli-people-for = People for { $name }, best first
cli-left-out = Left out, because they cannot be read as they are kept: { $names }. Open the studio to mend them.
cli-row = { $name }: { $verdict }
cli-written = Written to { $file }.
cli-photo = { $file }: { $view }
cli-stranger = Somebody whose measures nobody took
cli-seen-by = The hem as others see it
cli-seen-by-one = Seen { $who } ({ $place }): { $sentence }
cli-seen-by-eye = { $place }: { $sentence }
cli-marked = Written to { $file }: { $count ->
    [one] one mark
   *[other] { $count } marks
}, { $guessed ->
    [0] each at an edge
    [one] one of them without an edge and unsure
   *[other] { $guessed } of them without an edge and unsure
}. Look at each before you check.
cli-marks-head = Marks where the plan expects them, brought to the edges of the picture. Look at each, move it where it is off, and take it out where the place cannot be seen. { $guessed ->
    [0] Each lies at an edge.
    [one] One, which says unsure = true, found no edge.
   *[other] Those { $guessed } that say unsure = true found no edge.
}

## The studio

said-open = Your studio is { $file }. Ctrl-C closes it.
said-demo = All people and garments in it are invented. Ctrl-C closes it, and what you enter is gone then.
said-not-empty = { $file } holds people or garments already: it is opened as it is, nothing invented is added. Ctrl-C closes it.
said-backup = { $file } holds { $people ->
    [one] one person
   *[other] { $people } people
}, { $garments ->
    [one] one garment
   *[other] { $garments } garments
} and { $plans ->
    [one] one plan
   *[other] { $plans } plans
}, read back and checked.
said-restored = { $file } now holds { $people ->
    [one] one person
   *[other] { $people } people
}, { $garments ->
    [one] one garment
   *[other] { $garments } garments
} and { $plans ->
    [one] one plan
   *[other] { $plans } plans
}.
said-erased = { $name } is erased, with { $plans ->
    [0] no plans
    [one] one plan
   *[other] { $plans } plans
}. Backups made before still hold them.

## What is wrong around a case

trouble-no-file = there is no such file; check the name and the folder
trouble-no-permission = may not be read; check its permissions
trouble-folder = is a folder; name a file
trouble-unread = cannot be read: { $why }
trouble-unwritten = cannot be written: { $why }
trouble-standard = cannot be read as a standard: { $why }
trouble-standard-line = line { $line }, “{ $typed }”, cannot be read as a standard, whose lengths are plain numbers of centimetres: { $why }
trouble-marks-count = each photo takes one marks file, in the same order; there are { $photos ->
    [one] one photo
   *[other] { $photos } photos
} and { $marks ->
    [one] one marks file
   *[other] { $marks } marks files
}
trouble-overlay-count = one file for each photo, in the same order; there are { $photos ->
    [one] one photo
   *[other] { $photos } photos
} and { $overlays ->
    [one] one file
   *[other] { $overlays } files
} to draw into
trouble-overlay-kind = “{ $typed }” ends neither in .svg nor in .png; name the file so
trouble-over-input = would be written over { $file }, which is read here; name another file
trouble-overlay-twice = is named twice to draw into; name a file of its own for each photo
trouble-marks-there = is there already, perhaps with marks that you moved; name another file, or add --replace to write over it
trouble-pixel = “{ $typed }” is no place on a photo; write it in pixels from the upper left corner, such as 1510,3830
trouble-seen-by = “{ $typed }” is nobody who looks; write { $known }, or the eye's height, its distance and how far its floor lies above hers, such as 150,200,-100
trouble-seen-by-eye = in “{ $typed }” the eye's height is not between { $low } and { $high } cm above its own floor
trouble-seen-by-distance = in “{ $typed }” the distance is not between { $low } and { $high } cm
trouble-seen-by-floor = in “{ $typed }” the floor does not lie between { $low } and { $high } cm above hers
trouble-occasion = “{ $typed }” is no occasion; the occasions are { $known }
trouble-set = “{ $typed }” is not of the form DECISION=LENGTH, such as koshihimo_back=90
trouble-which-garment = the case has several garments; name one of them: { $known }
trouble-same-name = several garments are called “{ $typed }”; give the number instead, counted from 1
trouble-no-garment = no garment of the case is called “{ $typed }”; there are { $known }
trouble-schema = there is no document “{ $typed }”; there are { $known }
trouble-topic = there is neither a command nor a topic “{ $typed }”; topics are { $known }
trouble-no-place = this system names no folder for data; say where with --studio
trouble-no-studio = there is no studio here; "sunbu open" makes one
trouble-empty-studio = there is nothing in the studio to rank
trouble-not-ours = is not a studio of Sunbu; name another file
trouble-newer = was written by a newer Sunbu; use that one
trouble-damaged = is damaged ({ $why }); restore a backup
trouble-unreadable = holds an entry that cannot be read as it is kept, “{ $name }”, number { $number }; open the studio and mend it in its form, or erase it. What is wrong with it:
trouble-house-rules = has house rules that no longer stand ({ $why }); open the studio and mend them as text, or take them back
trouble-in-use = is in use by another program; close it and try again
trouble-exists = is there already; name a new file
trouble-traces = erased, but traces may remain in the file ({ $why }); close other programs and erase again
trouble-store = cannot be used: { $why }
trouble-erased = what was asked for is no longer in the studio
trouble-stale = it was changed meanwhile; look at it and try again
trouble-nobody = there is no “{ $typed }” in the studio, neither by name nor by number{ $near ->
    [0] {""}
    [one] ; there is only this, with its number: { $known }
   *[other] ; the nearest, with their numbers: { $known }
}
trouble-several = several are called “{ $typed }”; give the number instead: { $known }
trouble-not-sure = “{ $typed }” would be erased with { $plans ->
    [0] no plans
    [one] one plan
   *[other] { $plans } plans
}, which cannot be undone; add --yes to do it
trouble-no-port = “{ $typed }” is no port; a port is a number from 0 to 65535
trouble-port = the studio cannot be opened there: { $why }; name another port, or 0 for any that is free
trouble-network = the studio cannot be opened: { $why }

## What is wrong with the arguments

usage-no-command = There is no command “{ $name }”.
usage-which-command = Name a command.
usage-unknown = There is no option “{ $what }” here.
usage-missing = Missing: { $what }
usage-conflict = { $what } does not go with the other arguments, or is given twice.
usage-no-value = { $what } needs a value.
usage-bad-value = “{ $value }” is nothing that { $what } takes; it takes { $known }.
usage-not-text = An argument is not text in UTF-8.
usage-other = { $why }
usage-see-help = “sunbu help” shows the commands, “sunbu help COMMAND” what each one takes.
