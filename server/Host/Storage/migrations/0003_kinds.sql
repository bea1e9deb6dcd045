DROP TABLE house;
DROP TABLE farm;
CREATE TABLE account         (id TEXT PRIMARY KEY, name TEXT NOT NULL);
INSERT INTO account (id, name) VALUES ('program', 'the program'), ('local', 'this machine');
CREATE TABLE weather_station (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, name TEXT NOT NULL, name_key TEXT NOT NULL,
                              latitude_deg DOUBLE PRECISION NOT NULL, longitude_deg DOUBLE PRECISION NOT NULL, elevation_m DOUBLE PRECISION NOT NULL, first_season BIGINT, last_season BIGINT);
CREATE UNIQUE INDEX weather_station_name ON weather_station(coop_id, name_key) WHERE live = 1;
CREATE TABLE price_series    (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, name TEXT NOT NULL, name_key TEXT NOT NULL,
                              fuel TEXT NOT NULL, market TEXT NOT NULL, unit TEXT NOT NULL, first_month TEXT NOT NULL, last_month TEXT NOT NULL);
CREATE UNIQUE INDEX price_series_name ON price_series(coop_id, name_key) WHERE live = 1;
CREATE TABLE catalogue_entry (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, kind TEXT NOT NULL, code TEXT NOT NULL);
CREATE UNIQUE INDEX catalogue_entry_code ON catalogue_entry(coop_id, kind, code) WHERE live = 1;
CREATE TABLE scenario_set    (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, name TEXT NOT NULL, name_key TEXT NOT NULL,
                              first_season BIGINT NOT NULL, season_count BIGINT NOT NULL, seed BIGINT NOT NULL, replicate_count BIGINT NOT NULL, path_count BIGINT NOT NULL);
CREATE UNIQUE INDEX scenario_set_name ON scenario_set(coop_id, name_key) WHERE live = 1;
CREATE TABLE farm            (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, name TEXT NOT NULL, name_key TEXT NOT NULL,
                              place TEXT, weather_station_id TEXT REFERENCES weather_station(id), member_since_on TEXT, related_key TEXT,
                              consent_bills BIGINT NOT NULL DEFAULT 0, consent_name BIGINT NOT NULL DEFAULT 0, consent_lender BIGINT NOT NULL DEFAULT 0);
CREATE UNIQUE INDEX farm_name ON farm(coop_id, name_key) WHERE live = 1;
CREATE INDEX farm_station ON farm(weather_station_id);
CREATE TABLE supply_group    (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, farm_id TEXT NOT NULL REFERENCES farm(id),
                              name TEXT NOT NULL, name_key TEXT NOT NULL, fuel TEXT NOT NULL, kind TEXT NOT NULL, tank_size_l DOUBLE PRECISION);
CREATE UNIQUE INDEX supply_group_name ON supply_group(farm_id, name_key) WHERE live = 1;
CREATE TABLE house           (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, farm_id TEXT NOT NULL REFERENCES farm(id),
                              name TEXT NOT NULL, name_key TEXT NOT NULL, shape TEXT NOT NULL, floor_area_m2 DOUBLE PRECISION NOT NULL, draw_key BIGINT NOT NULL, film_due_year BIGINT);
CREATE UNIQUE INDEX house_name ON house(farm_id, name_key) WHERE live = 1;
CREATE UNIQUE INDEX house_draw_key ON house(coop_id, draw_key) WHERE live = 1;
CREATE TABLE house_supply    (house_id TEXT NOT NULL REFERENCES house(id), supply_group_id TEXT NOT NULL REFERENCES supply_group(id), heater_no BIGINT NOT NULL, share DOUBLE PRECISION NOT NULL,
                              PRIMARY KEY (house_id, supply_group_id, heater_no));
CREATE INDEX house_supply_group ON house_supply(supply_group_id);
CREATE TABLE fuel_record     (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, supply_group_id TEXT NOT NULL REFERENCES supply_group(id),
                              first_on TEXT, last_on TEXT, entry_count BIGINT NOT NULL, held_count BIGINT NOT NULL);
CREATE UNIQUE INDEX fuel_record_group ON fuel_record(supply_group_id) WHERE live = 1;
CREATE TABLE contract        (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, supply_group_id TEXT NOT NULL REFERENCES supply_group(id),
                              price_series_id TEXT REFERENCES price_series(id), kind TEXT NOT NULL, standing TEXT NOT NULL, starts_on TEXT, ends_on TEXT);
CREATE INDEX contract_group ON contract(supply_group_id);
CREATE INDEX contract_series ON contract(price_series_id);
CREATE TABLE option_set      (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, house_id TEXT NOT NULL REFERENCES house(id));
CREATE UNIQUE INDEX option_set_house ON option_set(house_id) WHERE live = 1;
CREATE TABLE quote           (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, farm_id TEXT NOT NULL REFERENCES farm(id),
                              quoted_on TEXT NOT NULL, valid_until_on TEXT, firmness TEXT NOT NULL);
CREATE INDEX quote_farm ON quote(farm_id);
CREATE TABLE change_item     (change_id TEXT NOT NULL REFERENCES change(id), place BIGINT NOT NULL, item_id TEXT NOT NULL, PRIMARY KEY (change_id, place));
INSERT INTO change_item (change_id, place, item_id) SELECT change_id, row_number() OVER (PARTITION BY change_id ORDER BY item_id) - 1, item_id FROM revision;
CREATE TABLE blob_use        (sha256 TEXT NOT NULL REFERENCES blob(sha256), item_id TEXT NOT NULL, revision BIGINT NOT NULL, PRIMARY KEY (sha256, item_id, revision),
                              FOREIGN KEY (item_id, revision) REFERENCES revision(item_id, revision));
CREATE VIEW item_scope AS
  SELECT h.item_id, h.coop_id, h.kind, h.revision, h.facts_sha256, h.live,
    CASE h.kind
      WHEN 'farm' THEN h.item_id
      WHEN 'house' THEN (SELECT x.farm_id FROM house x WHERE x.id = h.item_id)
      WHEN 'supply_group' THEN (SELECT x.farm_id FROM supply_group x WHERE x.id = h.item_id)
      WHEN 'quote' THEN (SELECT x.farm_id FROM quote x WHERE x.id = h.item_id)
      WHEN 'option_set' THEN (SELECT y.farm_id FROM option_set x JOIN house y ON y.id = x.house_id WHERE x.id = h.item_id)
      WHEN 'fuel_record' THEN (SELECT y.farm_id FROM fuel_record x JOIN supply_group y ON y.id = x.supply_group_id WHERE x.id = h.item_id)
      WHEN 'contract' THEN (SELECT y.farm_id FROM contract x JOIN supply_group y ON y.id = x.supply_group_id WHERE x.id = h.item_id)
    END AS farm_id
  FROM head h;
