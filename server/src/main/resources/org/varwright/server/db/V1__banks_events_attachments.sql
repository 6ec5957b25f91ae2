-- Bank files as they were put, and the lines of jobs as they were written. Lines are only ever added: there is no UPDATE or DELETE on them anywhere.
CREATE TABLE bank (
  id       TEXT PRIMARY KEY,
  text     TEXT NOT NULL,
  sha256   TEXT NOT NULL
) STRICT;

CREATE TABLE event (
  hash     TEXT PRIMARY KEY,
  job      TEXT NOT NULL,
  device   TEXT NOT NULL,
  seq      INTEGER NOT NULL,
  line     TEXT NOT NULL
) STRICT;

CREATE INDEX event_by_job ON event (job, device, seq);

CREATE TRIGGER event_is_never_changed BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;

CREATE TRIGGER event_is_never_taken_out BEFORE DELETE ON event
BEGIN SELECT RAISE(ABORT, 'an event is never taken out'); END;
