-- A correction may also say on which frame a moment of the cast is. It has no place then.
CREATE TABLE correction_of_any_kind (
    id TEXT PRIMARY KEY,
    clip_id TEXT NOT NULL REFERENCES clip (id),
    seconds REAL NOT NULL CHECK (seconds >= 0),
    part TEXT NOT NULL,
    x REAL,
    y REAL,
    person_id TEXT REFERENCES person (id),
    made_at TEXT NOT NULL,
    undone_at TEXT,
    CHECK ((x IS NULL) = (y IS NULL)),
    CHECK (part IN ('grip', 'tip', 'rig')
        OR (x IS NULL AND part IN ('backswingStart', 'backswingEnd', 'rearmost', 'forwardStart', 'fastestTurn', 'peakBend',
            'stop', 'release', 'rodStraight', 'tipLowest', 'clipNod')))
);

INSERT INTO correction_of_any_kind SELECT id, clip_id, seconds, part, x, y, person_id, made_at, undone_at FROM correction;

DROP TABLE correction;

ALTER TABLE correction_of_any_kind RENAME TO correction;

CREATE INDEX correction_of_clip ON correction (clip_id, made_at);
