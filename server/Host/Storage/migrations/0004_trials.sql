CREATE TABLE trial           (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, farm_id TEXT REFERENCES farm(id),
                              weather_station_id TEXT REFERENCES weather_station(id), retrofit_code TEXT NOT NULL, starts_on TEXT NOT NULL, ends_on TEXT NOT NULL);
CREATE INDEX trial_farm ON trial(farm_id);
CREATE INDEX trial_station ON trial(weather_station_id);
CREATE TABLE evidence        (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, trial_id TEXT REFERENCES trial(id),
                              retrofit_code TEXT NOT NULL, kind TEXT NOT NULL, counted BIGINT NOT NULL, factor_mean DOUBLE PRECISION NOT NULL, factor_sd DOUBLE PRECISION NOT NULL);
CREATE INDEX evidence_trial ON evidence(trial_id);
DROP VIEW item_scope;
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
      WHEN 'trial' THEN (SELECT x.farm_id FROM trial x WHERE x.id = h.item_id)
    END AS farm_id
  FROM head h;
