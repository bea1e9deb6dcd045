CREATE TABLE study_again (id TEXT PRIMARY KEY, study_id TEXT NOT NULL REFERENCES study(id), state TEXT NOT NULL, asked_by TEXT NOT NULL, asked_utc TEXT NOT NULL, done_utc TEXT, seconds DOUBLE PRECISION,
                          same BIGINT, stored_sha256 TEXT, again_sha256 TEXT, first_difference TEXT, failure TEXT);
CREATE INDEX study_again_of ON study_again(study_id, asked_utc);
