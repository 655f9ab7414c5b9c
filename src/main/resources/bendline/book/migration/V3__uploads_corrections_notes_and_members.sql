-- A clip on its way in. Its bytes lie in the folder of uploads under the same id.
CREATE TABLE upload (
    id TEXT PRIMARY KEY,
    person_id TEXT REFERENCES person (id),
    name TEXT NOT NULL,
    bytes INTEGER NOT NULL CHECK (bytes >= 0),
    begun_at TEXT NOT NULL
);

-- What is to be analysed, so that it is taken up again after a crash; tries are counted before they are made.
CREATE TABLE job (
    clip_id TEXT PRIMARY KEY REFERENCES clip (id),
    state TEXT NOT NULL CHECK (state IN ('waiting', 'done', 'failed')),
    tries INTEGER NOT NULL DEFAULT 0,
    says TEXT NOT NULL DEFAULT '',
    asked_at TEXT NOT NULL
);

-- A layer over the machine's marks. Nothing in it is ever changed but that it was taken back. No place: the part can't be seen.
CREATE TABLE correction (
    id TEXT PRIMARY KEY,
    clip_id TEXT NOT NULL REFERENCES clip (id),
    seconds REAL NOT NULL CHECK (seconds >= 0),
    part TEXT NOT NULL CHECK (part IN ('grip', 'tip', 'rig')),
    x REAL,
    y REAL,
    person_id TEXT REFERENCES person (id),
    made_at TEXT NOT NULL,
    undone_at TEXT,
    CHECK ((x IS NULL) = (y IS NULL))
);

CREATE INDEX correction_of_clip ON correction (clip_id, made_at);

CREATE TABLE note (
    id TEXT PRIMARY KEY,
    clip_id TEXT NOT NULL REFERENCES clip (id),
    seconds REAL NOT NULL CHECK (seconds >= 0),
    words TEXT NOT NULL,
    drawing TEXT NOT NULL DEFAULT '',
    person_id TEXT REFERENCES person (id),
    answers TEXT REFERENCES note (id) DEFERRABLE INITIALLY DEFERRED,
    drill_id TEXT REFERENCES drill (id),
    made_at TEXT NOT NULL
);

CREATE INDEX note_of_clip ON note (clip_id, made_at);

CREATE TABLE member (
    person_id TEXT PRIMARY KEY REFERENCES person (id),
    role TEXT NOT NULL CHECK (role IN ('pupil', 'coach')),
    password TEXT NOT NULL,
    joined_at TEXT NOT NULL
);

CREATE TABLE invitation (
    code_sha256 TEXT PRIMARY KEY,
    role TEXT NOT NULL CHECK (role IN ('pupil', 'coach')),
    made_at TEXT NOT NULL,
    used_at TEXT
);

-- Browsers that may come in: paired (nobody in particular) or signed in.
CREATE TABLE visit (
    token_sha256 TEXT PRIMARY KEY,
    person_id TEXT REFERENCES person (id),
    made_at TEXT NOT NULL
);

CREATE TABLE share (
    clip_id TEXT NOT NULL REFERENCES clip (id),
    person_id TEXT NOT NULL REFERENCES person (id),
    PRIMARY KEY (clip_id, person_id)
);
