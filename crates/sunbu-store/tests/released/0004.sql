-- A store as version 4 left it, written out as SQL: people, garments, plans, a house standard,
-- checks with their photos, one of them with a box over the face. Never changed: later versions have
-- to open it.

BEGIN TRANSACTION;
CREATE TABLE migration (
    version    INTEGER PRIMARY KEY,  -- the number of the file in this directory
    applied_at TEXT NOT NULL         -- when this store was brought to it
) STRICT;
INSERT INTO migration VALUES(1,'2001-02-03T04:05:06+09:00');
INSERT INTO migration VALUES(2,'2002-03-04T05:06:07+09:00');
INSERT INTO migration VALUES(3,'2003-04-05T06:07:08+09:00');
INSERT INTO migration VALUES(4,'2004-05-06T07:08:09+09:00');
CREATE TABLE person (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    revision INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save
    name     TEXT NOT NULL,   -- what the studio calls the person
    sex      TEXT NOT NULL,   -- key of the population table that completes the body
    note     TEXT NOT NULL,   -- anything else to remember; may be empty
    saved_at TEXT NOT NULL    -- the last save
) STRICT;
INSERT INTO person VALUES(1,2,'田辺 千代','women',replace('left shoulder lower\nshort steps','\n',char(10)),'2001-02-03T04:05:06+09:00');
INSERT INTO person VALUES(2,1,'Mori Sayo','women','','2001-02-03T04:05:06+09:00');
INSERT INTO person VALUES(3,1,'Goro','men','','2001-02-03T04:05:06+09:00');
CREATE TABLE person_field (
    person_id INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,
    field     TEXT NOT NULL,  -- key of a body measure, or of its deviation: hip_girth, hip_girth.sd
    text      TEXT NOT NULL,  -- the length as written, with its unit
    PRIMARY KEY (person_id, field)
) STRICT, WITHOUT ROWID;
INSERT INTO person_field VALUES(1,'hip_girth','91 cm');
INSERT INTO person_field VALUES(1,'hip_girth.sd','0.5 cm');
INSERT INTO person_field VALUES(1,'spine_to_wrist','kane 2 shaku 2 sun 6 bu');
INSERT INTO person_field VALUES(1,'stature','158 cm');
INSERT INTO person_field VALUES(1,'waist_height','2 shaku 5 sun 2 bu');
INSERT INTO person_field VALUES(2,'finger_breadth','1.6 cm');
INSERT INTO person_field VALUES(2,'fullest_girth','98.25 cm');
INSERT INTO person_field VALUES(2,'hand_breadth','7.5 cm');
INSERT INTO person_field VALUES(2,'stature','162.56 cm');
INSERT INTO person_field VALUES(3,'hip_girth','97 cm');
INSERT INTO person_field VALUES(3,'stature','172 cm');
CREATE TABLE piece (
    id       INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    revision INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save
    name     TEXT NOT NULL,   -- what the studio calls the garment
    note     TEXT NOT NULL,   -- anything else to remember; may be empty
    saved_at TEXT NOT NULL    -- the last save
) STRICT;
INSERT INTO piece VALUES(1,1,'Grey tsumugi','second-hand; hem let down','2001-02-03T04:05:06+09:00');
CREATE TABLE piece_field (
    piece_id INTEGER NOT NULL REFERENCES piece (id) ON DELETE CASCADE,
    field    TEXT NOT NULL,   -- kind, cloth, mitake_from, or key of a part or of its deviation
    text     TEXT NOT NULL,   -- the word or the length as written
    PRIMARY KEY (piece_id, field)
) STRICT, WITHOUT ROWID;
INSERT INTO piece_field VALUES(1,'cloth','stiff');
INSERT INTO piece_field VALUES(1,'kind','nagagi');
INSERT INTO piece_field VALUES(1,'mitake','4 shaku 1 sun 5 bu');
INSERT INTO piece_field VALUES(1,'mitake_from','back_seam');
INSERT INTO piece_field VALUES(1,'ushirohaba','7 sun 5 bu');
INSERT INTO piece_field VALUES(1,'yuki','65.5 cm');
INSERT INTO piece_field VALUES(1,'yuki.sd','1 cm');
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
INSERT INTO "plan" VALUES(1,1,1,2,'Tea in May','2001-02-03T04:05:06+09:00','formal','田辺 千代','Grey tsumugi',replace('occasion = "formal"\n\n[person]\nname = "田辺 千代"\nsex = "women"\nstature = 158\nwaist_height = "2 shaku 5 sun 2 bu"\nhip_girth = { value = 91, sd = 0.5 }\nspine_to_wrist = "kane 2 shaku 2 sun 6 bu"\nnote = """\nleft shoulder lower\nshort steps"""\n\n[garment]\nname = "Grey tsumugi"\nkind = "nagagi"\ncloth = "stiff"\nmitake_from = "back_seam"\nmitake = "4 shaku 1 sun 5 bu"\nyuki = { value = 65.5, sd = 1 }\nushirohaba = "7 sun 5 bu"\nnote = "second-hand; hem let down"\n\n[dressing]\nback_seam_hip = -1.25\nnape_drop = 5.333333333333333\n\n[dresser]\nname = "Mori Sayo"\nsex = "women"\nstature = 162.56\nfullest_girth = 98.25\nhand_breadth = 7.5\nfinger_breadth = 1.6\n','\n',char(10)),'occasion=formal&nape_drop=5.333');
INSERT INTO "plan" VALUES(2,1,NULL,NULL,'夏祭り','2001-02-03T04:05:06+09:00','everyday','田辺 千代','藍の浴衣',replace('occasion = "everyday"\n\n[person]\nname = "田辺 千代"\nsex = "women"\nstature = 158\nwaist_height = "2 shaku 5 sun 2 bu"\nhip_girth = { value = 91, sd = 0.5 }\nspine_to_wrist = "kane 2 shaku 2 sun 6 bu"\nnote = """\nleft shoulder lower\nshort steps"""\n\n[garment]\nname = "藍の浴衣"\nkind = "yukata"\ncloth = "cotton"\nmitake_from = "shoulder"\nmitake = 161\nmaehaba = 23\n','\n',char(10)),'');
CREATE TABLE setting (
    only_row      INTEGER PRIMARY KEY CHECK (only_row = 1),  -- there is one studio
    standard_toml TEXT,  -- the studio's own standard; none: the customary one
    standard_at   TEXT,  -- when it was set
    dresser_id    INTEGER REFERENCES person (id) ON DELETE SET NULL  -- whose hands dress
, standard_revision INTEGER NOT NULL DEFAULT 1 CHECK (standard_revision >= 1)) STRICT;
INSERT INTO setting VALUES(1,replace('name = "house of the three pines"\n\n[targets.uwamae_corner]\nlow = 2.0\nhigh = 8.0\nweight = 0.5\nsource = "S24, F8: raised by half of the inner edge; S30: ankle in front at most"\n\n[targets.shitamae_above_uwamae]\nlow = 1.5\nhigh = 6.0\nweight = 1.0\nsource = "F6, S24: inner edge raised twice the outer, else it hangs below"\n\n[targets.hem_taper]\nlow = 12.0\nhigh = 32.0\nweight = 0.2\nsource = "chosen: the raises of F6 and S28 give 16 to 27"\n\n[targets.front_cover]\nlow = 2.0\nhigh = 5.0\nweight = 2.0\nsource = "common practice: two fingers of a hand laid on the side show; four are a fault"\n\n[targets.inner_cover]\nlow = 10.0\nhigh = 24.0\nweight = 1.0\nsource = "F11: the inner panel may reach only mid-body when narrow; F10, S144b: too much hinders walking"\n\n[targets.back_seam_hip]\nlow = -1.0\nhigh = 1.0\nweight = 0.5\nsource = "F11: the lower half may shift when narrow; F13"\n\n[targets.back_seam_top]\nlow = -0.5\nhigh = 0.5\nweight = 2.0\nsource = "F13, F16: aligned to the spine"\n\n[targets.back_seam_bend]\nlow = -2.5\nhigh = 2.5\nweight = 2.0\nsource = "common practice: the slack above the tie gives about an inch"\n\n[targets.koshihimo_over_hip_bone]\nlow = 0.0\nhigh = 8.0\nweight = 0.2\nsource = "F8: 2 to 3 above the hip bone; P21: over the iliac crest, some 8 higher, less slipping and less pressure than at the waist"\n\n[targets.koshihimo_slope]\nlow = 0.0\nhigh = 2.0\nweight = 0.5\nsource = "F33: front low, back high"\n\n[targets.collar_end_clearance]\nlow = 2.5\nhigh = 12.0\nweight = 2.0\nsource = "S9, S14, S15: the collar end 3 to 4 below the tie; 9 to 12 with a waist tie"\n\n[targets.collar_end_visible]\nhigh = 3.0\nweight = 1.0\nsource = "S25: 2 to 3; S16: 1 to 2 or hidden"\n\n[targets.fold_front]\nlow = 5.0\nhigh = 7.0\nweight = 3.0\nsource = "F30: 5 to 6; X2: 7; S33: the wearer''s index finger"\n\n[targets.fold_right]\nlow = 5.0\nhigh = 7.0\nweight = 2.0\nsource = "as the front"\n\n[targets.fold_back]\nlow = 4.5\nhigh = 7.5\nweight = 1.0\nsource = "as the front, seen less closely (chosen)"\n\n[targets.fold_slant]\nlow = -0.7\nhigh = 0.7\nweight = 2.0\nsource = "F27, F28: a fold that slants is a fault; the width of the range is chosen"\n\n[targets.bulk_front]\nhigh = 6.0\nweight = 0.5\nsource = "chosen: more than a double layer of 3 shows under the obi"\n\n[targets.bulk_right]\nhigh = 6.0\nweight = 0.5\nsource = "chosen, as the front"\n\n[targets.bulk_back]\nhigh = 8.0\nweight = 0.5\nsource = "chosen: the drum hides more at the back"\n\n[targets.nape_drop]\nlow = 5.0\nhigh = 8.0\nweight = 2.0\nsource = "S24: three fingers to a light fist; fist 8 to 10, three fingers 5 (from memory)"\n\n[targets.ridge_setback]\nlow = 1.0\nhigh = 9.0\nweight = 0.5\nsource = "S21: behind the shoulder by the finished kurikoshi at least; P9: 4 behind"\n\n[targets.juban_crossing]\nlow = -1.5\nhigh = 1.5\nweight = 1.0\nsource = "S116: at the hollow of the throat"\n\n[targets.juban_show]\nlow = 1.5\nhigh = 2.0\nweight = 2.0\nsource = "S24: 1.5 to 2; F9: 1.5; S27: 2"\n\n[targets.juban_hold]\nlow = 10.0\nweight = 0.5\nsource = "chosen: a small triangle lets the collar shift"\n\n[targets.kimono_hold]\nlow = 8.0\nweight = 0.5\nsource = "chosen, as the juban"\n\n[targets.obi_over_hip_bone]\nlow = -1.0\nhigh = 6.0\nweight = 0.5\nsource = "X2, F29: lower edge at the hip bone at the side, front low"\n\n[targets.trunk_step]\nhigh = 14.0\nweight = 0.3\nsource = "PD6: aim at a straight cylinder; PD2: about 5 towels for an ordinary build, 7 to 8 for a slim one, which leaves 14 (chosen to give those)"\n\n[targets.sleeve_short]\nlow = -1.0\nhigh = 6.0\nweight = 1.0\nsource = "S72, S87: at the wrist bone; S3: height x 0.4 + 2, which leaves the reference bodies'' wrist bone 3 to 5 free; S86: 2 to 3 shorter is accepted for daily wear (range chosen from these)"\n\n[targets.drum_height]\nweight = 1.0\nsource = "28 to 30 for 160 (from memory), in proportion"\n\n[targets.drum_height.low]\nstature = 0.17\nplus = 0.0\n\n[targets.drum_height.high]\nstature = 0.19\nplus = 0.0\n\n[targets.tare_length]\nlow = 7.0\nhigh = 8.0\nweight = 1.0\nsource = "S24"\n\n[targets.obiage_show]\nlow = 1.0\nhigh = 3.0\nweight = 1.0\nsource = "1 to 3 by age and style (from memory)"\n\n[usual.hem_height]\nfrom = "floor"\nplus = 1.0\nspread = 3.0\nlow = 0.0\nhigh = 12.0\nhands = 0.8\n\n[usual.uwamae_raise]\nfrom = "floor"\nspread = 2.0\nlow = 0.0\nhigh = 12.0\nhands = 1.0\n\n[usual.uwamae_raise.by_cloth]\nsoft = 8.0\ncotton = 6.0\nstiff = 4.5\n\n[usual.shitamae_raise]\nfrom = "floor"\nspread = 3.0\nlow = 0.0\nhigh = 18.0\nhands = 1.5\n\n[usual.shitamae_raise.by_cloth]\nsoft = 15.0\ncotton = 10.0\nstiff = 8.0\n\n[usual.shitamae_fold_back]\nfrom = "floor"\nplus = 0.0\nspread = 4.0\nlow = 0.0\nhigh = 12.0\nhands = 0.5\n\n[usual.back_seam_hip]\nfrom = "floor"\nplus = 0.0\nspread = 1.5\nlow = -5.0\nhigh = 5.0\nhands = 0.7\n\n[usual.back_seam_top]\nfrom = "floor"\nplus = 0.0\nspread = 0.5\nlow = -3.0\nhigh = 3.0\nhands = 0.4\n\n[usual.koshihimo_back]\nfrom = "hip_bone"\nplus = 3.5\nspread = 2.0\nlow = -1.0\nhigh = 14.0\nhands = 1.0\n\n[usual.koshihimo_front]\nfrom = "hip_bone"\nplus = 2.5\nspread = 2.0\nlow = -3.0\nhigh = 14.0\nhands = 1.0\n\n[usual.take_up_front]\nfrom = "floor"\nplus = 0.0\nspread = 4.0\nlow = 0.0\nhigh = 16.0\nhands = 0.8\n\n[usual.take_up_right]\nfrom = "floor"\nplus = 0.0\nspread = 4.0\nlow = 0.0\nhigh = 16.0\nhands = 0.8\n\n[usual.take_up_back]\nfrom = "floor"\nplus = 0.0\nspread = 4.0\nlow = 0.0\nhigh = 20.0\nhands = 0.8\n\n[usual.nape_drop]\nfrom = "floor"\nplus = 6.5\nspread = 2.0\nlow = 0.0\nhigh = 14.0\nhands = 0.8\n\n[usual.juban_overlap]\nfrom = "floor"\nplus = 17.0\nspread = 3.0\nlow = 4.0\nhigh = 26.0\nhands = 1.0\n\n[usual.kimono_overlap]\nfrom = "floor"\nplus = 9.0\nspread = 3.0\nlow = 2.0\nhigh = 24.0\nhands = 1.0\n\n[usual.obi_lower_edge]\nfrom = "hip_bone"\nplus = 2.0\nspread = 2.0\nlow = -3.0\nhigh = 14.0\nhands = 0.8\n\n[usual.drum_height]\nfrom = "floor"\nspread = 2.0\nlow = 18.0\nhigh = 36.0\nhands = 1.0\n\n[usual.drum_height.plus]\nstature = 0.18\nplus = 0.0\n\n[usual.tare_length]\nfrom = "floor"\nplus = 7.5\nspread = 1.0\nlow = 3.0\nhigh = 14.0\nhands = 0.7\n\n[usual.obiage_show]\nfrom = "floor"\nplus = 2.0\nspread = 1.0\nlow = 0.0\nhigh = 6.0\nhands = 0.5\n\n[usual.waist_padding]\nfrom = "floor"\nplus = 0.7\nspread = 1.5\nlow = 0.0\nhigh = 3.0\nhands = 0.3\n\n[usual.hip_padding]\nfrom = "floor"\nplus = 0.0\nspread = 0.3\nlow = 0.0\nhigh = 1.5\nhands = 0.1\n\n[occasions.indoors.targets.hem_back]\nlow = 0.5\nhigh = 2.0\nweight = 2.0\nsource = "S30, S31: just off the floor; footwear off, so it must not be trodden on (range chosen)"\n\n[occasions.indoors.usual]\n\n[occasions.formal.targets.hem_back]\nlow = 0.0\nhigh = 1.5\nweight = 3.0\nsource = "S24, S30: just off the floor, hides the heel from behind"\n\n[occasions.formal.targets.nape_drop]\nlow = 7.0\nhigh = 10.0\nweight = 2.0\nsource = "S24, F1: one fist; S32: more for formal; fist 8 to 10 (from memory)"\n\n[occasions.formal.targets.sleeve_short]\nlow = -1.0\nhigh = 4.5\nweight = 1.5\nsource = "S3: height x 0.4 + 2, with no further allowance in formal wear (chosen)"\n\n[occasions.formal.usual.nape_drop]\nplus = 8.5\n\n[occasions.stage.targets.hem_back]\nlow = 0.0\nhigh = 1.0\nweight = 3.0\nsource = "S24: at the floor; seats below a stage see more of the leg (chosen)"\n\n[occasions.stage.targets.nape_drop]\nlow = 7.0\nhigh = 11.0\nweight = 2.0\nsource = "S24, S32: more for formal (range chosen)"\n\n[occasions.stage.usual.hem_height]\nplus = 0.5\n\n[occasions.stage.usual.nape_drop]\nplus = 9.0\n\n[occasions.everyday.targets.hem_back]\nlow = 2.0\nhigh = 6.0\nweight = 2.0\nsource = "S24, S30, S31: tabi to be seen, ankle bone just covered"\n\n[occasions.everyday.targets.nape_drop]\nlow = 4.0\nhigh = 7.0\nweight = 2.0\nsource = "S24: three fingers; N3: about 5 for a yukata"\n\n[occasions.everyday.usual.hem_height]\nplus = 4.0\n\n[occasions.everyday.usual.nape_drop]\nplus = 5.5\n\n[occasions.practice.targets.hem_back]\nlow = 1.0\nhigh = 4.0\nweight = 1.0\nsource = "N1: about 2 above the floor in a university''s teaching; the range is chosen wider"\n\n[occasions.practice.usual.hem_height]\nplus = 2.0\n','\n',char(10)),'2001-02-03T04:05:06+09:00',2,3);
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
INSERT INTO checkup VALUES(1,2,1,1,'Tea in May','2003-04-05T06:07:08+09:00','formal','田辺 千代','Grey tsumugi',replace('occasion = "formal"\n\n[person]\nname = "田辺 千代"\nsex = "women"\nstature = 158\nwaist_height = "2 shaku 5 sun 2 bu"\nhip_girth = { value = 91, sd = 0.5 }\nspine_to_wrist = "kane 2 shaku 2 sun 6 bu"\nnote = """\nleft shoulder lower\nshort steps"""\n\n[garment]\nname = "Grey tsumugi"\nkind = "nagagi"\ncloth = "stiff"\nmitake_from = "back_seam"\nmitake = "4 shaku 1 sun 5 bu"\nyuki = { value = 65.5, sd = 1 }\nushirohaba = "7 sun 5 bu"\nnote = "second-hand; hem let down"\n\n[dressing]\nback_seam_hip = -1.25\nnape_drop = 5.333333333333333\n','\n',char(10)),NULL,NULL,NULL,'["hem_uneven","fold_bulky"]');
INSERT INTO checkup VALUES(2,1,NULL,NULL,'生徒 四','2003-04-05T06:07:08+09:00','everyday','生徒 四','',NULL,'women','4 shaku 1 sun 5 bu','sent by post','[]');
CREATE TABLE photo (
    id           INTEGER PRIMARY KEY AUTOINCREMENT,  -- never used again after erasing
    checkup_id   INTEGER NOT NULL REFERENCES checkup (id) ON DELETE CASCADE,
    revision     INTEGER NOT NULL CHECK (revision >= 1),  -- grows by one with each save of marks
    view         TEXT NOT NULL,  -- key of the side; each check has one photo of each at most
    added_at     TEXT NOT NULL,  -- when it came in
    marking_json TEXT NOT NULL,  -- its size, lens and marks, and what was typed about them
    jpeg         BLOB NOT NULL, hidden_json TEXT,  -- upright, without anything that the camera wrote about it
    UNIQUE (checkup_id, view)
) STRICT;
INSERT INTO photo VALUES(1,1,4,'front','2003-04-05T06:07:08+09:00','{"shot":{"view":"front","size":[64,96],"focal":0.75,"lens_height_cm":{"value":140.0,"sd":3.0},"mirrored":false,"references":{},"marks":{"floor":{"at":[32.0,90.5],"trust":"sure"},"crown":{"at":[31.5,6.0],"trust":"unsure"},"hem_left":{"at":[40.25,86.0],"trust":"sure"}}},"moved":["floor","crown","hem_left"],"left_out":["wrist_left"],"snapping":false,"lens_height":"140 cm"}',X'ffd8ffe000104a464946ffd9','{"left":0.25,"top":0.125,"width":0.25,"height":0.125}');
INSERT INTO photo VALUES(2,2,1,'back','2003-04-05T06:07:08+09:00','{"shot":{"view":"back","size":[64,96],"mirrored":true,"references":{},"marks":{}},"moved":[],"left_out":[],"snapping":true,"lens_height":""}',X'ffd8ffd9',NULL);
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('person',3);
INSERT INTO sqlite_sequence VALUES('piece',2);
INSERT INTO sqlite_sequence VALUES('plan',2);
INSERT INTO sqlite_sequence VALUES('checkup',2);
INSERT INTO sqlite_sequence VALUES('photo',2);
CREATE INDEX plan_of_person ON plan (person_id, garment_id);
CREATE INDEX plan_of_garment ON plan (garment_id);
CREATE INDEX plan_of_dresser ON plan (dresser_id);
CREATE INDEX checkup_of_person ON checkup (person_id);
CREATE INDEX checkup_of_plan ON checkup (plan_id);
COMMIT;
PRAGMA application_id = 1400204898;
PRAGMA user_version = 4;
