-- A signature drawn on the screen; it stands with what can be erased.
ALTER TABLE personal ADD COLUMN drawn TEXT CHECK (state = 'kept' OR drawn IS NULL);
