-- One row a case; head is the state that holds now, tip the newest one that redo leads back to.
CREATE TABLE cases (
  id   INTEGER PRIMARY KEY,
  code TEXT    NOT NULL UNIQUE COLLATE NOCASE,
  head INTEGER NOT NULL,
  tip  INTEGER NOT NULL
) STRICT;

-- Every state that a case ever had, each with the one it came from. Rows are never changed.
CREATE TABLE revisions (
  case_id INTEGER NOT NULL REFERENCES cases (id),
  number  INTEGER NOT NULL,
  parent  INTEGER,
  at      TEXT    NOT NULL,
  action  TEXT    NOT NULL,
  parts   TEXT    NOT NULL,
  PRIMARY KEY (case_id, number)
) STRICT;

-- Content by its SHA-256. Large content has no bytes here: it is a file of that name.
CREATE TABLE contents (
  hash  TEXT    PRIMARY KEY,
  size  INTEGER NOT NULL,
  bytes BLOB
) STRICT;
