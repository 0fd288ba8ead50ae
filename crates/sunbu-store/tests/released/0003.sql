-- A store as version 3 left it, written out as SQL: people, garments, plans, a house standard,
-- checks with their photos. Never changed: later versions have to open it.

BEGIN TRANSACTION;
CREATE TABLE migration (
    version    INTEGER PRIMARY KEY,  -- the number of the file in this directory
    applied_at TEXT NOT NULL         -- when this store was brought to it
) STRICT;
INSERT INTO "migration" VALUES(1,'2001-02-03T04:05:06+09:00');
INSERT INTO "migration" VALUES(2,'2002-03-04T05:06:07+09:00');
INSERT INTO "migration" VALUES(3,'2003-04-05T06:07:08+09:00');
CREATE TABLE person (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    revision INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save
    name     TEXT NOT NULL,   -- what the studio calls the person
    sex      TEXT NOT NULL,   -- key of the population table that completes the body
    note     TEXT NOT NULL,   -- anything else to remember; may be empty
    saved_at TEXT NOT NULL    -- the last save
) STRICT;
INSERT INTO "person" VALUES(1,2,'田辺 千代','women','left shoulder lower
short steps','2001-02-03T04:05:06+09:00');
INSERT INTO "person" VALUES(2,1,'Mori Sayo','women','','2001-02-03T04:05:06+09:00');
INSERT INTO "person" VALUES(3,1,'Goro','men','','2001-02-03T04:05:06+09:00');
CREATE TABLE person_field (
    person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,
    field     TEXT NOT NULL,  -- key of a body measure, or of its deviation: hip_girth, hip_girth.sd
    text      TEXT NOT NULL,  -- the length as written, with its unit
    PRIMARY KEY (person_id, field)
) STRICT, WITHOUT ROWID;
INSERT INTO "person_field" VALUES(1,'hip_girth','91 cm');
INSERT INTO "person_field" VALUES(1,'hip_girth.sd','0.5 cm');
INSERT INTO "person_field" VALUES(1,'spine_to_wrist','kane 2 shaku 2 sun 6 bu');
INSERT INTO "person_field" VALUES(1,'stature','158 cm');
INSERT INTO "person_field" VALUES(1,'waist_height','2 shaku 5 sun 2 bu');
INSERT INTO "person_field" VALUES(2,'finger_breadth','1.6 cm');
INSERT INTO "person_field" VALUES(2,'fullest_girth','98.25 cm');
INSERT INTO "person_field" VALUES(2,'hand_breadth','7.5 cm');
INSERT INTO "person_field" VALUES(2,'stature','162.56 cm');
INSERT INTO "person_field" VALUES(3,'hip_girth','97 cm');
INSERT INTO "person_field" VALUES(3,'stature','172 cm');
CREATE TABLE piece (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    revision INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save
    name     TEXT NOT NULL,   -- what the studio calls the garment
    note     TEXT NOT NULL,   -- anything else to remember; may be empty
    saved_at TEXT NOT NULL    -- the last save
) STRICT;
INSERT INTO "piece" VALUES(1,1,'Grey tsumugi','second-hand; hem let down','2001-02-03T04:05:06+09:00');
CREATE TABLE piece_field (
    piece_id INTEGER NOT NULL REFERENCES piece (id) ON DELETE CASCADE,
    field    TEXT NOT NULL,   -- kind, cloth, mitake_from, or key of a part or of its deviation
    text     TEXT NOT NULL,   -- the word or the length as written
    PRIMARY KEY (piece_id, field)
) STRICT, WITHOUT ROWID;
INSERT INTO "piece_field" VALUES(1,'cloth','stiff');
INSERT INTO "piece_field" VALUES(1,'kind','nagagi');
INSERT INTO "piece_field" VALUES(1,'mitake','4 shaku 1 sun 5 bu');
INSERT INTO "piece_field" VALUES(1,'mitake_from','back_seam');
INSERT INTO "piece_field" VALUES(1,'ushirohaba','7 sun 5 bu');
INSERT INTO "piece_field" VALUES(1,'yuki','65.5 cm');
INSERT INTO "piece_field" VALUES(1,'yuki.sd','1 cm');
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
INSERT INTO "plan" VALUES(1,1,1,2,'Tea in May','2001-02-03T04:05:06+09:00','formal','田辺 千代','Grey tsumugi','occasion = "formal"

[person]
name = "田辺 千代"
sex = "women"
stature = 158
waist_height = "2 shaku 5 sun 2 bu"
hip_girth = { value = 91, sd = 0.5 }
spine_to_wrist = "kane 2 shaku 2 sun 6 bu"
note = """
left shoulder lower
short steps"""

[garment]
name = "Grey tsumugi"
kind = "nagagi"
cloth = "stiff"
mitake_from = "back_seam"
mitake = "4 shaku 1 sun 5 bu"
yuki = { value = 65.5, sd = 1 }
ushirohaba = "7 sun 5 bu"
note = "second-hand; hem let down"

[dressing]
back_seam_hip = -1.25
nape_drop = 5.333333333333333

[dresser]
name = "Mori Sayo"
sex = "women"
stature = 162.56
fullest_girth = 98.25
hand_breadth = 7.5
finger_breadth = 1.6
','occasion=formal&nape_drop=5.333');
INSERT INTO "plan" VALUES(2,1,NULL,NULL,'夏祭り','2001-02-03T04:05:06+09:00','everyday','田辺 千代','藍の浴衣','occasion = "everyday"

[person]
name = "田辺 千代"
sex = "women"
stature = 158
waist_height = "2 shaku 5 sun 2 bu"
hip_girth = { value = 91, sd = 0.5 }
spine_to_wrist = "kane 2 shaku 2 sun 6 bu"
note = """
left shoulder lower
short steps"""

[garment]
name = "藍の浴衣"
kind = "yukata"
cloth = "cotton"
mitake_from = "shoulder"
mitake = 161
maehaba = 23
','');
CREATE TABLE setting (
    only_row      INTEGER PRIMARY KEY CHECK (only_row = 1),  -- there is one studio
    standard_toml TEXT,  -- the studio's own standard; none: the customary one
    standard_at   TEXT,  -- when it was set
    dresser_id    INTEGER REFERENCES person (id) ON DELETE SET NULL  -- whose hands dress
, standard_revision INTEGER NOT NULL DEFAULT 1 CHECK (standard_revision >= 1)) STRICT;
INSERT INTO "setting" VALUES(1,'name = "house of the three pines"

[targets.uwamae_corner]
low = 2.0
high = 8.0
weight = 0.5
source = "S24, F8: raised by half of the inner edge; S30: ankle in front at most"

[targets.shitamae_above_uwamae]
low = 1.5
high = 6.0
weight = 1.0
source = "F6, S24: inner edge raised twice the outer, else it hangs below"

[targets.hem_taper]
low = 12.0
high = 32.0
weight = 0.2
source = "chosen: the raises of F6 and S28 give 16 to 27"

[targets.front_cover]
low = 2.0
high = 5.0
weight = 2.0
source = "common practice: two fingers of a hand laid on the side show; four are a fault"

[targets.inner_cover]
low = 10.0
high = 24.0
weight = 1.0
source = "F11: the inner panel may reach only mid-body when narrow; F10, S144b: too much hinders walking"

[targets.back_seam_hip]
low = -1.0
high = 1.0
weight = 0.5
source = "F11: the lower half may shift when narrow; F13"

[targets.back_seam_top]
low = -0.5
high = 0.5
weight = 2.0
source = "F13, F16: aligned to the spine"

[targets.back_seam_bend]
low = -2.5
high = 2.5
weight = 2.0
source = "common practice: the slack above the tie gives about an inch"

[targets.koshihimo_over_hip_bone]
low = 0.0
high = 8.0
weight = 0.2
source = "F8: 2 to 3 above the hip bone; P21: over the iliac crest, some 8 higher, less slipping and less pressure than at the waist"

[targets.koshihimo_slope]
low = 0.0
high = 2.0
weight = 0.5
source = "F33: front low, back high"

[targets.collar_end_clearance]
low = 2.5
high = 12.0
weight = 2.0
source = "S9, S14, S15: the collar end 3 to 4 below the tie; 9 to 12 with a waist tie"

[targets.collar_end_visible]
high = 3.0
weight = 1.0
source = "S25: 2 to 3; S16: 1 to 2 or hidden"

[targets.fold_front]
low = 5.0
high = 7.0
weight = 3.0
source = "F30: 5 to 6; X2: 7; S33: the wearer''s index finger"

[targets.fold_right]
low = 5.0
high = 7.0
weight = 2.0
source = "as the front"

[targets.fold_back]
low = 4.5
high = 7.5
weight = 1.0
source = "as the front, seen less closely (chosen)"

[targets.fold_slant]
low = -0.7
high = 0.7
weight = 2.0
source = "F27, F28: a fold that slants is a fault; the width of the range is chosen"

[targets.bulk_front]
high = 6.0
weight = 0.5
source = "chosen: more than a double layer of 3 shows under the obi"

[targets.bulk_right]
high = 6.0
weight = 0.5
source = "chosen, as the front"

[targets.bulk_back]
high = 8.0
weight = 0.5
source = "chosen: the drum hides more at the back"

[targets.nape_drop]
low = 5.0
high = 8.0
weight = 2.0
source = "S24: three fingers to a light fist; fist 8 to 10, three fingers 5 (from memory)"

[targets.ridge_setback]
low = 1.0
high = 9.0
weight = 0.5
source = "S21: behind the shoulder by the finished kurikoshi at least; P9: 4 behind"

[targets.juban_crossing]
low = -1.5
high = 1.5
weight = 1.0
source = "S116: at the hollow of the throat"

[targets.juban_show]
low = 1.5
high = 2.0
weight = 2.0
source = "S24: 1.5 to 2; F9: 1.5; S27: 2"

[targets.juban_hold]
low = 10.0
weight = 0.5
source = "chosen: a small triangle lets the collar shift"

[targets.kimono_hold]
low = 8.0
weight = 0.5
source = "chosen, as the juban"

[targets.obi_over_hip_bone]
low = -1.0
high = 6.0
weight = 0.5
source = "X2, F29: lower edge at the hip bone at the side, front low"

[targets.trunk_step]
high = 14.0
weight = 0.3
source = "PD6: aim at a straight cylinder; PD2: about 5 towels for an ordinary build, 7 to 8 for a slim one, which leaves 14 (chosen to give those)"

[targets.sleeve_short]
low = -1.0
high = 6.0
weight = 1.0
source = "S72, S87: at the wrist bone; S3: height x 0.4 + 2, which leaves the reference bodies'' wrist bone 3 to 5 free; S86: 2 to 3 shorter is accepted for daily wear (range chosen from these)"

[targets.drum_height]
weight = 1.0
source = "28 to 30 for 160 (from memory), in proportion"

[targets.drum_height.low]
stature = 0.17
plus = 0.0

[targets.drum_height.high]
stature = 0.19
plus = 0.0

[targets.tare_length]
low = 7.0
high = 8.0
weight = 1.0
source = "S24"

[targets.obiage_show]
low = 1.0
high = 3.0
weight = 1.0
source = "1 to 3 by age and style (from memory)"

[usual.hem_height]
from = "floor"
plus = 1.0
spread = 3.0
low = 0.0
high = 12.0
hands = 0.8

[usual.uwamae_raise]
from = "floor"
spread = 2.0
low = 0.0
high = 12.0
hands = 1.0

[usual.uwamae_raise.by_cloth]
soft = 8.0
cotton = 6.0
stiff = 4.5

[usual.shitamae_raise]
from = "floor"
spread = 3.0
low = 0.0
high = 18.0
hands = 1.5

[usual.shitamae_raise.by_cloth]
soft = 15.0
cotton = 10.0
stiff = 8.0

[usual.shitamae_fold_back]
from = "floor"
plus = 0.0
spread = 4.0
low = 0.0
high = 12.0
hands = 0.5

[usual.back_seam_hip]
from = "floor"
plus = 0.0
spread = 1.5
low = -5.0
high = 5.0
hands = 0.7

[usual.back_seam_top]
from = "floor"
plus = 0.0
spread = 0.5
low = -3.0
high = 3.0
hands = 0.4

[usual.koshihimo_back]
from = "hip_bone"
plus = 3.5
spread = 2.0
low = -1.0
high = 14.0
hands = 1.0

[usual.koshihimo_front]
from = "hip_bone"
plus = 2.5
spread = 2.0
low = -3.0
high = 14.0
hands = 1.0

[usual.take_up_front]
from = "floor"
plus = 0.0
spread = 4.0
low = 0.0
high = 16.0
hands = 0.8

[usual.take_up_right]
from = "floor"
plus = 0.0
spread = 4.0
low = 0.0
high = 16.0
hands = 0.8

[usual.take_up_back]
from = "floor"
plus = 0.0
spread = 4.0
low = 0.0
high = 20.0
hands = 0.8

[usual.nape_drop]
from = "floor"
plus = 6.5
spread = 2.0
low = 0.0
high = 14.0
hands = 0.8

[usual.juban_overlap]
from = "floor"
plus = 17.0
spread = 3.0
low = 4.0
high = 26.0
hands = 1.0

[usual.kimono_overlap]
from = "floor"
plus = 9.0
spread = 3.0
low = 2.0
high = 24.0
hands = 1.0

[usual.obi_lower_edge]
from = "hip_bone"
plus = 2.0
spread = 2.0
low = -3.0
high = 14.0
hands = 0.8

[usual.drum_height]
from = "floor"
spread = 2.0
low = 18.0
high = 36.0
hands = 1.0

[usual.drum_height.plus]
stature = 0.18
plus = 0.0

[usual.tare_length]
from = "floor"
plus = 7.5
spread = 1.0
low = 3.0
high = 14.0
hands = 0.7

[usual.obiage_show]
from = "floor"
plus = 2.0
spread = 1.0
low = 0.0
high = 6.0
hands = 0.5

[usual.waist_padding]
from = "floor"
plus = 0.7
spread = 1.5
low = 0.0
high = 3.0
hands = 0.3

[usual.hip_padding]
from = "floor"
plus = 0.0
spread = 0.3
low = 0.0
high = 1.5
hands = 0.1

[occasions.indoors.targets.hem_back]
low = 0.5
high = 2.0
weight = 2.0
source = "S30, S31: just off the floor; footwear off, so it must not be trodden on (range chosen)"

[occasions.indoors.usual]

[occasions.formal.targets.hem_back]
low = 0.0
high = 1.5
weight = 3.0
source = "S24, S30: just off the floor, hides the heel from behind"

[occasions.formal.targets.nape_drop]
low = 7.0
high = 10.0
weight = 2.0
source = "S24, F1: one fist; S32: more for formal; fist 8 to 10 (from memory)"

[occasions.formal.targets.sleeve_short]
low = -1.0
high = 4.5
weight = 1.5
source = "S3: height x 0.4 + 2, with no further allowance in formal wear (chosen)"

[occasions.formal.usual.nape_drop]
plus = 8.5

[occasions.stage.targets.hem_back]
low = 0.0
high = 1.0
weight = 3.0
source = "S24: at the floor; seats below a stage see more of the leg (chosen)"

[occasions.stage.targets.nape_drop]
low = 7.0
high = 11.0
weight = 2.0
source = "S24, S32: more for formal (range chosen)"

[occasions.stage.usual.hem_height]
plus = 0.5

[occasions.stage.usual.nape_drop]
plus = 9.0

[occasions.everyday.targets.hem_back]
low = 2.0
high = 6.0
weight = 2.0
source = "S24, S30, S31: tabi to be seen, ankle bone just covered"

[occasions.everyday.targets.nape_drop]
low = 4.0
high = 7.0
weight = 2.0
source = "S24: three fingers; N3: about 5 for a yukata"

[occasions.everyday.usual.hem_height]
plus = 4.0

[occasions.everyday.usual.nape_drop]
plus = 5.5

[occasions.practice.targets.hem_back]
low = 1.0
high = 4.0
weight = 1.0
source = "N1: about 2 above the floor in a university''s teaching; the range is chosen wider"

[occasions.practice.usual.hem_height]
plus = 2.0
','2001-02-03T04:05:06+09:00',2,3);
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
INSERT INTO "checkup" VALUES(1,2,1,1,'Tea in May','2003-04-05T06:07:08+09:00','formal','田辺 千代','Grey tsumugi','occasion = "formal"

[person]
name = "田辺 千代"
sex = "women"
stature = 158
waist_height = "2 shaku 5 sun 2 bu"
hip_girth = { value = 91, sd = 0.5 }
spine_to_wrist = "kane 2 shaku 2 sun 6 bu"
note = """
left shoulder lower
short steps"""

[garment]
name = "Grey tsumugi"
kind = "nagagi"
cloth = "stiff"
mitake_from = "back_seam"
mitake = "4 shaku 1 sun 5 bu"
yuki = { value = 65.5, sd = 1 }
ushirohaba = "7 sun 5 bu"
note = "second-hand; hem let down"

[dressing]
back_seam_hip = -1.25
nape_drop = 5.333333333333333
',NULL,NULL,NULL,'["hem_uneven","fold_bulky"]');
INSERT INTO "checkup" VALUES(2,1,NULL,NULL,'生徒 四','2003-04-05T06:07:08+09:00','everyday','生徒 四','',NULL,'women','4 shaku 1 sun 5 bu','sent by post','[]');
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
INSERT INTO "photo" VALUES(1,1,4,'front','2003-04-05T06:07:08+09:00','{"shot":{"view":"front","size":[64,96],"focal":0.75,"lens_height_cm":{"value":140.0,"sd":3.0},"mirrored":false,"references":{},"marks":{"floor":{"at":[32.0,90.5],"trust":"sure"},"crown":{"at":[31.5,6.0],"trust":"unsure"},"hem_left":{"at":[40.25,86.0],"trust":"sure"}}},"moved":["floor","crown","hem_left"],"left_out":["wrist_left"],"snapping":false,"lens_height":"140 cm"}',X'FFD8FFE000104A464946FFD9');
INSERT INTO "photo" VALUES(2,2,1,'back','2003-04-05T06:07:08+09:00','{"shot":{"view":"back","size":[64,96],"mirrored":true,"references":{},"marks":{}},"moved":[],"left_out":[],"snapping":true,"lens_height":""}',X'FFD8FFD9');
CREATE INDEX plan_of_person ON plan (person_id, garment_id);
CREATE INDEX plan_of_garment ON plan (garment_id);
CREATE INDEX plan_of_dresser ON plan (dresser_id);
CREATE INDEX checkup_of_person ON checkup (person_id);
CREATE INDEX checkup_of_plan ON checkup (plan_id);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('person',3);
INSERT INTO "sqlite_sequence" VALUES('piece',2);
INSERT INTO "sqlite_sequence" VALUES('plan',2);
INSERT INTO "sqlite_sequence" VALUES('checkup',2);
INSERT INTO "sqlite_sequence" VALUES('photo',2);
COMMIT;
PRAGMA application_id = 1400204898;
PRAGMA user_version = 3;
