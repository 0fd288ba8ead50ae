-- The studio: who is dressed, what there is to wear, and the plans made.
-- Measures are kept as they were written ("3 shaku 2 sun"), never converted: the core reads them.
-- Moments are RFC 3339 text, given by the caller.

CREATE TABLE migration (
    version    INTEGER PRIMARY KEY,  -- the number of the file in this directory
    applied_at TEXT NOT NULL         -- when this store was brought to it
) STRICT;

CREATE TABLE person (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    revision INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save
    name     TEXT NOT NULL,   -- what the studio calls the person
    sex      TEXT NOT NULL,   -- key of the population table that completes the body
    note     TEXT NOT NULL,   -- anything else to remember; may be empty
    saved_at TEXT NOT NULL    -- the last save
) STRICT;

CREATE TABLE person_field (
    person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,
    field     TEXT NOT NULL,  -- key of a body measure, or of its deviation: hip_girth, hip_girth.sd
    text      TEXT NOT NULL,  -- the length as written, with its unit
    PRIMARY KEY (person_id, field)
) STRICT, WITHOUT ROWID;

CREATE TABLE piece (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    revision INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save
    name     TEXT NOT NULL,   -- what the studio calls the garment
    note     TEXT NOT NULL,   -- anything else to remember; may be empty
    saved_at TEXT NOT NULL    -- the last save
) STRICT;

CREATE TABLE piece_field (
    piece_id INTEGER NOT NULL REFERENCES piece (id) ON DELETE CASCADE,
    field    TEXT NOT NULL,   -- kind, cloth, mitake_from, or key of a part or of its deviation
    text     TEXT NOT NULL,   -- the word or the length as written
    PRIMARY KEY (piece_id, field)
) STRICT, WITHOUT ROWID;

CREATE TABLE plan (
    id           INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    -- A plan is about a body, so it goes with its person; a garment may leave the studio alone.
    person_id    INTEGER REFERENCES person (id) ON DELETE CASCADE,
    garment_id   INTEGER REFERENCES piece (id) ON DELETE SET NULL,
    dresser_id   INTEGER REFERENCES person (id) ON DELETE SET NULL,  -- whose hands; in the case too
    title        TEXT NOT NULL,  -- what the studio calls the plan
    made_at      TEXT NOT NULL,  -- when it was kept
    occasion     TEXT NOT NULL,  -- key of the occasion
    person_name  TEXT NOT NULL,  -- as it stands in the case, for lists
    garment_name TEXT NOT NULL,  -- as it stands in the case, for lists
    case_toml    TEXT NOT NULL,  -- the whole case file, as it was then
    query        TEXT NOT NULL   -- the choices of the page it was made on
) STRICT;

CREATE INDEX plan_of_person ON plan (person_id, garment_id);
CREATE INDEX plan_of_garment ON plan (garment_id);
CREATE INDEX plan_of_dresser ON plan (dresser_id);

CREATE TABLE setting (
    only_row      INTEGER PRIMARY KEY CHECK (only_row = 1),  -- there is one studio
    standard_toml TEXT,  -- the studio's own standard; none: the customary one
    standard_at   TEXT,  -- when it was set
    dresser_id    INTEGER REFERENCES person (id) ON DELETE SET NULL  -- whose hands dress
) STRICT;

INSERT INTO setting (only_row) VALUES (1);
