CREATE TABLE person (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    handed TEXT CHECK (handed IN ('left', 'right')),
    notes TEXT NOT NULL DEFAULT ''
);

CREATE TABLE kit (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    rod TEXT,
    rod_length_m REAL,
    free_length_m REAL,
    drop_m REAL,
    reel TEXT,
    line TEXT,
    leader TEXT,
    rig TEXT,
    rig_empty_g REAL,
    rig_loaded_g REAL,
    stem TEXT,
    turn_m REAL,
    notes TEXT NOT NULL DEFAULT ''
);

CREATE TABLE technique (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    what TEXT NOT NULL DEFAULT ''
);

CREATE TABLE session (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    day TEXT NOT NULL CHECK (day GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
    person_id TEXT REFERENCES person (id),
    place TEXT,
    water TEXT,
    wind_mps REAL CHECK (wind_mps BETWEEN 0 AND 60),
    wind_from_deg REAL CHECK (wind_from_deg >= 0 AND wind_from_deg < 360),
    camera_side TEXT,
    notes TEXT NOT NULL DEFAULT ''
);

CREATE TABLE clip (
    id TEXT PRIMARY KEY,
    sha256 TEXT NOT NULL UNIQUE,
    name TEXT NOT NULL,
    file TEXT NOT NULL UNIQUE,
    bytes INTEGER NOT NULL
);

-- One row a cast. A clip may hold several.
CREATE TABLE throw (
    id TEXT PRIMARY KEY,
    session_id TEXT NOT NULL REFERENCES session (id),
    number INTEGER NOT NULL CHECK (number >= 1),
    clip_id TEXT REFERENCES clip (id),
    clip_cast INTEGER NOT NULL DEFAULT 1 CHECK (clip_cast >= 1),
    kit_id TEXT REFERENCES kit (id),
    technique_id TEXT REFERENCES technique (id),
    distance_m REAL CHECK (distance_m > 0),
    distance_how TEXT,
    hit_clip INTEGER CHECK (hit_clip IN (0, 1)),
    bait_on INTEGER CHECK (bait_on IN (0, 1)),
    notes TEXT NOT NULL DEFAULT '',
    added_at TEXT NOT NULL,
    UNIQUE (session_id, number),
    UNIQUE (clip_id, clip_cast)
);

-- One row for every time a clip was analysed; old ones stay.
CREATE TABLE analysis (
    id TEXT PRIMARY KEY,
    clip_id TEXT NOT NULL REFERENCES clip (id),
    made_at TEXT NOT NULL,
    program TEXT NOT NULL,
    folder TEXT NOT NULL UNIQUE,
    casts INTEGER NOT NULL
);

CREATE INDEX analysis_of_clip ON analysis (clip_id, made_at);

CREATE TABLE drill (
    id TEXT PRIMARY KEY,
    person_id TEXT REFERENCES person (id),
    what TEXT NOT NULL,
    set_on TEXT NOT NULL,
    done_on TEXT
);
