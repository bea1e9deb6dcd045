CREATE TABLE computed     (key_sha256 TEXT PRIMARY KEY, kind TEXT NOT NULL, numbers_version BIGINT NOT NULL, used_utc TEXT NOT NULL, bytes BLOB NOT NULL);
CREATE TABLE study_unit   (study_id TEXT NOT NULL REFERENCES study(id), unit_no BIGINT NOT NULL, unit_sha256 TEXT NOT NULL REFERENCES computed(key_sha256), PRIMARY KEY (study_id, unit_no));
CREATE INDEX study_unit_of ON study_unit(unit_sha256);
CREATE TABLE study_option (study_id TEXT NOT NULL REFERENCES study(id), option_id TEXT NOT NULL, house_id TEXT NOT NULL, farm_id TEXT NOT NULL, fuel TEXT NOT NULL, option_key TEXT NOT NULL,
                           outlay_usd DOUBLE PRECISION NOT NULL, npv_p10_usd DOUBLE PRECISION NOT NULL, npv_p50_usd DOUBLE PRECISION NOT NULL, npv_p90_usd DOUBLE PRECISION NOT NULL,
                           saving_p50_usd DOUBLE PRECISION NOT NULL, lasting_p50_season BIGINT, never_share DOUBLE PRECISION NOT NULL, data_grade TEXT NOT NULL, unit_sha256 TEXT NOT NULL,
                           PRIMARY KEY (study_id, option_id));
CREATE INDEX study_option_npv ON study_option(study_id, npv_p50_usd, option_id);
CREATE TABLE study_sum    (study_id TEXT NOT NULL REFERENCES study(id), name TEXT NOT NULL, bytes BLOB NOT NULL, PRIMARY KEY (study_id, name));
