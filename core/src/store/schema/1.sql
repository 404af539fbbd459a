CREATE TABLE meta (
    -- lugbook book
    name TEXT NOT NULL PRIMARY KEY,
    value BLOB NOT NULL
) STRICT, WITHOUT ROWID;

-- The entries, in the order they came in. `digest` follows `bytes`, so that an
-- entry can be found again in the raw bytes of a broken file.
CREATE TABLE entry (
    arrived INTEGER NOT NULL PRIMARY KEY,
    id BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
    stream BLOB NOT NULL CHECK (length(stream) = 16),
    number INTEGER NOT NULL CHECK (number > 0),
    ms INTEGER NOT NULL,
    n INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    digest BLOB NOT NULL CHECK (length(digest) = 32),
    UNIQUE (stream, number)
) STRICT;

CREATE TRIGGER entry_stays BEFORE UPDATE ON entry
BEGIN
    SELECT RAISE(ABORT, 'an entry is never changed');
END;

CREATE TRIGGER entry_remains BEFORE DELETE ON entry
BEGIN
    SELECT RAISE(ABORT, 'an entry is never deleted');
END;

CREATE TRIGGER entry_not_replaced BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.id)
    OR EXISTS (SELECT 1 FROM entry WHERE stream = NEW.stream AND number = NEW.number)
    OR EXISTS (SELECT 1 FROM entry WHERE arrived = NEW.arrived)
BEGIN
    SELECT RAISE(ABORT, 'an entry is never replaced');
END;

-- Names, phone numbers and plates beside their entries; can be erased.
CREATE TABLE personal (
    id BLOB NOT NULL PRIMARY KEY REFERENCES entry (id),
    state TEXT NOT NULL CHECK (state IN ('kept', 'erased', 'absent')),
    salt BLOB CHECK (length(salt) = 16),
    name TEXT,
    phone TEXT,
    plate TEXT,
    CHECK ((state = 'kept') = (salt IS NOT NULL)),
    CHECK (state = 'kept' OR (name IS NULL AND phone IS NULL AND plate IS NULL))
) STRICT, WITHOUT ROWID;

-- The end of each stream.
CREATE TABLE head (
    stream BLOB NOT NULL PRIMARY KEY CHECK (length(stream) = 16),
    number INTEGER NOT NULL CHECK (number >= 0),
    ms INTEGER NOT NULL,
    n INTEGER NOT NULL,
    digest BLOB CHECK (length(digest) = 32),
    CHECK ((number = 0) = (digest IS NULL))
) STRICT, WITHOUT ROWID;

-- Numbers that were lost to damage and are known to be missing.
CREATE TABLE gap (
    stream BLOB NOT NULL CHECK (length(stream) = 16),
    first INTEGER NOT NULL CHECK (first > 0),
    last INTEGER NOT NULL CHECK (last >= first),
    PRIMARY KEY (stream, first)
) STRICT, WITHOUT ROWID;

-- Derived state that can be thrown away: what another room made of the first
-- `arrived` entries, and the digest of the last of them.
CREATE TABLE snapshot (
    name TEXT NOT NULL PRIMARY KEY,
    version INTEGER NOT NULL,
    arrived INTEGER NOT NULL,
    head BLOB NOT NULL CHECK (length(head) = 32),
    bytes BLOB NOT NULL,
    digest BLOB NOT NULL CHECK (length(digest) = 32)
) STRICT, WITHOUT ROWID;
