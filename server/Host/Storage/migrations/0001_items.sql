CREATE TABLE coop     (id TEXT PRIMARY KEY, name TEXT NOT NULL, is_demo BIGINT NOT NULL DEFAULT 0, last_seq BIGINT NOT NULL);
CREATE TABLE change   (id TEXT PRIMARY KEY, coop_id TEXT NOT NULL REFERENCES coop(id), seq BIGINT NOT NULL, at_utc TEXT NOT NULL, account_id TEXT NOT NULL, said TEXT NOT NULL,
                       undoes_id TEXT REFERENCES change(id), request_id TEXT NOT NULL, UNIQUE (coop_id, seq), UNIQUE (account_id, request_id));
CREATE TABLE revision (item_id TEXT NOT NULL, revision BIGINT NOT NULL, change_id TEXT NOT NULL REFERENCES change(id), format BIGINT NOT NULL,
                       facts TEXT, remarks TEXT, facts_sha256 TEXT NOT NULL, PRIMARY KEY (item_id, revision));
CREATE INDEX revision_change ON revision(change_id);
CREATE TABLE head     (item_id TEXT PRIMARY KEY, coop_id TEXT NOT NULL REFERENCES coop(id), kind TEXT NOT NULL, revision BIGINT NOT NULL, facts_sha256 TEXT NOT NULL,
                       live BIGINT NOT NULL, UNIQUE (coop_id, kind, item_id), FOREIGN KEY (item_id, revision) REFERENCES revision(item_id, revision));
CREATE TABLE farm     (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, name TEXT NOT NULL, name_key TEXT NOT NULL,
                       weather_station_id TEXT, related_key TEXT);
CREATE UNIQUE INDEX farm_name ON farm(coop_id, name_key) WHERE live = 1;
CREATE TABLE house    (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, farm_id TEXT NOT NULL REFERENCES farm(id),
                       name TEXT NOT NULL, name_key TEXT NOT NULL, shape TEXT NOT NULL, floor_area_m2 DOUBLE PRECISION NOT NULL, draw_key BIGINT NOT NULL);
CREATE UNIQUE INDEX house_name ON house(farm_id, name_key) WHERE live = 1;
CREATE TABLE blob     (sha256 TEXT PRIMARY KEY, size_bytes BIGINT NOT NULL, bytes BLOB NOT NULL);
