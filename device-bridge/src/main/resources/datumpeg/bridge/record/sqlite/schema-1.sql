-- The record, version 1. Run in one transaction on an empty file.
-- What the columns mean, and how the chain of digests runs: docs/reference-record.md.

CREATE TABLE entry (
  row_id INTEGER PRIMARY KEY CHECK (row_id > 0),
  organisation TEXT NOT NULL,
  job TEXT NOT NULL,
  kind TEXT NOT NULL,
  origin TEXT NOT NULL CHECK (length(origin) = 36),
  sequence INTEGER NOT NULL CHECK (sequence >= 1),
  at TEXT NOT NULL CHECK (length(at) = 27),
  body TEXT NOT NULL CHECK (json_valid(body)),
  previous TEXT NOT NULL CHECK (length(previous) = 64),
  digest TEXT NOT NULL CHECK (length(digest) = 64),
  number REAL,
  UNIQUE (origin, sequence),
  CHECK ((sequence = 1) = (kind = 'session')),
  CHECK (kind <> 'reading' OR number IS NOT NULL)
) STRICT;

CREATE INDEX entry_by_job ON entry (job, organisation, kind, at);

CREATE UNIQUE INDEX entry_reading ON entry (json_extract(body, '$.id')) WHERE kind = 'reading';

CREATE INDEX entry_void ON entry (json_extract(body, '$.reading')) WHERE kind = 'void';

CREATE INDEX entry_job_revision
  ON entry (job, organisation, json_extract(body, '$.revision'), json_extract(body, '$.name'))
  WHERE kind = 'job-revision';

CREATE TRIGGER entry_is_never_altered BEFORE UPDATE ON entry
BEGIN
  SELECT RAISE(ABORT, 'a row of the record is never altered');
END;

CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
BEGIN
  SELECT RAISE(ABORT, 'a row of the record is never deleted');
END;

-- Also holds off INSERT OR REPLACE, which deletes without asking the trigger above.
CREATE TRIGGER entry_only_extends_its_chain BEFORE INSERT ON entry
BEGIN
  SELECT RAISE(ABORT, 'a row must follow the last row of its chain')
  WHERE NEW.sequence <> 1 + coalesce((SELECT max(sequence) FROM entry WHERE origin = NEW.origin), 0)
     OR NEW.previous <> coalesce(
          (SELECT digest FROM entry WHERE origin = NEW.origin AND sequence = NEW.sequence - 1),
          '0000000000000000000000000000000000000000000000000000000000000000');
  SELECT RAISE(ABORT, 'a row with this number is there already')
  WHERE EXISTS (SELECT 1 FROM entry WHERE row_id = NEW.row_id);
  SELECT RAISE(ABORT, 'a reading with this id is there already')
  WHERE NEW.kind = 'reading'
    AND EXISTS (SELECT 1 FROM entry
                WHERE kind = 'reading'
                  AND json_extract(body, '$.id') = json_extract(NEW.body, '$.id'));
END;

CREATE VIEW reading AS
SELECT
  organisation,
  job,
  json_extract(body, '$.id') AS id,
  json_extract(body, '$.stage') AS stage,
  json_extract(body, '$.quantity') AS quantity,
  json_extract(body, '$.target') AS target,
  json_extract(body, '$.value') AS value,
  json_extract(body, '$.unit') AS unit,
  number,
  json_extract(body, '$.face') AS face,
  json_extract(body, '$.meter') AS meter,
  json_extract(body, '$.setup') AS setup,
  json_extract(body, '$.up') AS up,
  json_extract(body, '$.round') AS round,
  json_extract(body, '$.readAt') AS read_at,
  json_extract(body, '$.operator') AS operator,
  json_extract(body, '$.note') AS note,
  json_extract(body, '$.link') AS link,
  json_extract(body, '$.raw') AS raw,
  json_extract(body, '$.source') AS source,
  NOT EXISTS (
    SELECT 1 FROM entry AS other
    WHERE other.kind = 'void'
      AND json_extract(other.body, '$.reading') = json_extract(entry.body, '$.id')) AS in_force,
  at AS stored_at,
  origin,
  sequence
FROM entry
WHERE kind = 'reading';

CREATE VIEW voided AS
SELECT
  organisation,
  job,
  json_extract(body, '$.reading') AS reading,
  json_extract(body, '$.why') AS why,
  at AS stored_at,
  origin,
  sequence
FROM entry
WHERE kind = 'void';

CREATE VIEW moved AS
SELECT
  organisation,
  job,
  json_extract(body, '$.thing') AS thing,
  json_extract(body, '$.why') AS why,
  at AS stored_at,
  origin,
  sequence
FROM entry
WHERE kind = 'moved';

CREATE VIEW job_revision AS
SELECT
  organisation,
  job,
  json_extract(body, '$.revision') AS revision,
  json_extract(body, '$.name') AS name,
  json_extract(body, '$.sha256') AS sha256,
  json_extract(body, '$.toml') AS toml,
  at AS stored_at,
  origin,
  sequence
FROM entry
WHERE kind = 'job-revision';
