-- Checks of finished dressings: whom they show, how she was to be dressed, the photos with their
-- marks, and the faults seen by eye.

CREATE TABLE checkup (
    id           INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    revision     INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save
    -- A check is about a body, so it goes with its person; a plan may leave the studio alone.
    person_id    INTEGER REFERENCES person (id) ON DELETE CASCADE,  -- none: a stranger
    plan_id      INTEGER REFERENCES plan (id) ON DELETE SET NULL,   -- none: of no kept plan
    title        TEXT NOT NULL,  -- what the studio calls the check
    made_at      TEXT NOT NULL,  -- when it was begun
    occasion     TEXT NOT NULL,  -- key of the occasion it is judged for
    person_name  TEXT NOT NULL,  -- as it stands in the case, or the stranger's; for lists
    garment_name TEXT NOT NULL,  -- as it stands in the case, for lists; empty for a stranger
    case_toml    TEXT,           -- the whole case file with every decision; none: a stranger
    sex          TEXT,           -- of a stranger: key of the table that completes her
    stature      TEXT,           -- of a stranger: as it was written, with its unit; may be empty
    note         TEXT,           -- of a stranger: anything else to remember; may be empty
    ticks_json   TEXT NOT NULL,  -- list of the keys of the faults seen by eye
    CHECK ((case_toml IS NULL) = (sex IS NOT NULL)),
    CHECK ((sex IS NULL) = (stature IS NULL) AND (sex IS NULL) = (note IS NULL)),
    CHECK ((case_toml IS NULL) = (person_id IS NULL))
) STRICT;

CREATE INDEX checkup_of_person ON checkup (person_id);
CREATE INDEX checkup_of_plan ON checkup (plan_id);

CREATE TABLE photo (
    id           INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    checkup_id   INTEGER NOT NULL REFERENCES checkup (id) ON DELETE CASCADE,
    revision     INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save of marks
    view         TEXT NOT NULL,  -- key of the side; each check has one photo of each at most
    added_at     TEXT NOT NULL,  -- when it came in
    marking_json TEXT NOT NULL,  -- its size, lens and marks, and what was typed about them
    jpeg         BLOB NOT NULL,  -- upright, without anything that the camera wrote about it
    UNIQUE (checkup_id, view)
) STRICT;
