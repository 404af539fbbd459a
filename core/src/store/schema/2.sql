-- Seals: what a device signed of its stream, as it was signed. Never changed, and
-- never without the entry that it is over.
CREATE TABLE seal (
    stream BLOB NOT NULL CHECK (length(stream) = 16),
    number INTEGER NOT NULL CHECK (number > 0),
    bytes BLOB NOT NULL,
    signature BLOB NOT NULL CHECK (length(signature) = 64),
    PRIMARY KEY (stream, number),
    FOREIGN KEY (stream, number) REFERENCES entry (stream, number)
) STRICT, WITHOUT ROWID;

CREATE TRIGGER seal_stays BEFORE UPDATE ON seal
BEGIN
    SELECT RAISE(ABORT, 'a seal is never changed');
END;

CREATE TRIGGER seal_remains BEFORE DELETE ON seal
BEGIN
    SELECT RAISE(ABORT, 'a seal is never deleted');
END;

CREATE TRIGGER seal_not_replaced BEFORE INSERT ON seal
WHEN EXISTS (SELECT 1 FROM seal WHERE stream = NEW.stream AND number = NEW.number)
BEGIN
    SELECT RAISE(ABORT, 'a seal is never replaced');
END;
