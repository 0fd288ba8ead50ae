-- The house standard gets a revision, so that of two windows the later one is told.
-- It grows by one when the standard is set and when it is taken back, from 1.

ALTER TABLE setting
    ADD COLUMN standard_revision INTEGER NOT NULL DEFAULT 1 CHECK (standard_revision >= 1);
