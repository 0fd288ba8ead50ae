-- A box over the face on a photo, kept so that it is drawn on every picture that may leave the studio.

ALTER TABLE photo ADD COLUMN hidden_json TEXT;  -- shares of width and height; none: nothing is hidden
