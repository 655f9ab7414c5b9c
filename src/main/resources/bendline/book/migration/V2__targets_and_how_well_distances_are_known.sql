-- Until now a distance was a bare number; from now on it says how well it is known. What was written down before stays as it
-- was: nobody can say afterwards how carefully it was measured.
ALTER TABLE throw ADD COLUMN distance_sd_m REAL CHECK (distance_sd_m >= 0);

CREATE TABLE target (
    id TEXT PRIMARY KEY,
    person_id TEXT REFERENCES person (id),
    measure TEXT NOT NULL,
    value REAL NOT NULL,
    by_day TEXT,
    set_on TEXT NOT NULL
);
