-- What follows from a record, kept beside it. May be thrown away at any time; docs/reference-record.md.

CREATE TABLE basis (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  basis TEXT NOT NULL,
  mark_row INTEGER NOT NULL,
  mark_digest TEXT NOT NULL
) STRICT;

CREATE TABLE job (
  job_no INTEGER PRIMARY KEY,
  organisation TEXT NOT NULL,
  job TEXT NOT NULL,
  name TEXT NOT NULL,
  revision INTEGER NOT NULL,
  readings INTEGER NOT NULL,
  voids INTEGER NOT NULL,
  last_at TEXT NOT NULL,
  touched INTEGER NOT NULL,
  settled INTEGER NOT NULL DEFAULT -1,
  key TEXT NOT NULL DEFAULT '',
  site TEXT NOT NULL DEFAULT '',
  crew TEXT NOT NULL DEFAULT '',
  slab_by TEXT NOT NULL DEFAULT '',
  started TEXT NOT NULL DEFAULT '',
  trouble TEXT NOT NULL DEFAULT '',
  UNIQUE (organisation, job)
) STRICT;

CREATE TABLE stage (
  job_no INTEGER NOT NULL,
  position INTEGER NOT NULL,
  stage TEXT NOT NULL,
  measured INTEGER NOT NULL,
  hold_point TEXT NOT NULL,
  conforming INTEGER NOT NULL,
  undecided INTEGER NOT NULL,
  nonconforming INTEGER NOT NULL,
  stale INTEGER NOT NULL,
  no_limit INTEGER NOT NULL,
  not_measured INTEGER NOT NULL,
  PRIMARY KEY (job_no, position)
) STRICT, WITHOUT ROWID;

CREATE TABLE outcome (
  job_no INTEGER NOT NULL,
  position INTEGER NOT NULL,
  stage TEXT NOT NULL,
  at TEXT NOT NULL,
  meters TEXT NOT NULL,
  check_id TEXT NOT NULL,
  target TEXT NOT NULL,
  round INTEGER NOT NULL,
  unit TEXT NOT NULL,
  nominal REAL,
  measured REAL NOT NULL,
  deviation REAL NOT NULL,
  uncertainty REAL NOT NULL,
  coverage REAL NOT NULL,
  lower REAL,
  upper REAL,
  limit_source TEXT,
  probability REAL,
  verdict TEXT,
  stale INTEGER NOT NULL,
  PRIMARY KEY (job_no, position)
) STRICT, WITHOUT ROWID;
