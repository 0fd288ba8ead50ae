# Numbers with their unit, their trust, and against body or hand. Digits come already rounded.

cm = { $value } cm
cm-uncertain = { $value } ± { $sd } cm
interval = { $low }–{ $high } cm
interval-signed = { $low } to { $high } cm
range-both = { $low } to { $high } cm
range-from = at least { $low } cm
range-to = at most { $high } cm
range-open = any

# One number of a step: $what is its name, $value has its unit, $against may be left out.
number = { $what }: { $value } ({ $interval })
number-against = { $what }: { $value }, { $against } ({ $interval })

# $count is a whole or half number as a key: n0h is a half, n1 is one, n1h is one and a half.
fingers = { $count ->
    [n0h] half a finger
    [n1] one finger
    [n1h] one and a half fingers
    [n2] two fingers
    [n2h] two and a half fingers
    [n3] three fingers
    [n3h] three and a half fingers
    [n4] four fingers
    [n4h] four and a half fingers
    [n5] five fingers
    [n5h] five and a half fingers
    [n6] six fingers
   *[other] { $number } fingers
}
index-fingers = { $count ->
    [n1] one index finger
   *[other] { $number } index fingers
}
fists = { $count ->
    [n1] a light fist
    [n1h] one and a half light fists
    [n2] two light fists
    [n2h] two and a half light fists
    [n3] three light fists
   *[other] { $number } light fists
}
against-at = at the { $landmark }
against-above = { $fingers } above the { $landmark }
against-below = { $fingers } below the { $landmark }

and-then = { $first }, { $next }
cm-under = under { $value } cm
