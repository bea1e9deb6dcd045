CREATE TABLE study       (id TEXT PRIMARY KEY, coop_id TEXT NOT NULL REFERENCES coop(id), number BIGINT NOT NULL, state TEXT NOT NULL, asked_by TEXT NOT NULL, asked_utc TEXT NOT NULL, done_utc TEXT,
                          seconds DOUBLE PRECISION, input_sha256 TEXT NOT NULL, futures_sha256 TEXT, numbers_version BIGINT NOT NULL, program_version TEXT NOT NULL, result_sha256 TEXT,
                          failure TEXT, result BLOB, UNIQUE (coop_id, number));
CREATE TABLE study_input (study_id TEXT NOT NULL REFERENCES study(id), item_id TEXT NOT NULL, revision BIGINT NOT NULL, facts_sha256 TEXT NOT NULL, PRIMARY KEY (study_id, item_id));
