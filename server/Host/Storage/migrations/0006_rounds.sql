CREATE TABLE funding_round   (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, name TEXT NOT NULL, name_key TEXT NOT NULL,
                              state TEXT NOT NULL, budget_cents BIGINT NOT NULL);
CREATE UNIQUE INDEX funding_round_name ON funding_round(coop_id, name_key) WHERE live = 1;
CREATE TABLE decision        (id TEXT PRIMARY KEY, coop_id TEXT NOT NULL REFERENCES coop(id), number BIGINT NOT NULL, kind TEXT NOT NULL, round_id TEXT NOT NULL REFERENCES head(item_id),
                              study_id TEXT REFERENCES study(id), corrects_id TEXT REFERENCES decision(id), change_id TEXT NOT NULL REFERENCES change(id), body TEXT NOT NULL,
                              body_sha256 TEXT NOT NULL, previous_sha256 TEXT NOT NULL, decided_utc TEXT NOT NULL, UNIQUE (coop_id, number));
CREATE INDEX decision_round ON decision(round_id);
CREATE INDEX decision_change ON decision(change_id);
CREATE INDEX decision_study ON decision(study_id);
CREATE TRIGGER decision_never_changes BEFORE UPDATE ON decision BEGIN SELECT RAISE(ABORT, 'a decision is never changed; a correction is a new one'); END;
CREATE TRIGGER decision_never_goes BEFORE DELETE ON decision BEGIN SELECT RAISE(ABORT, 'a decision is never deleted; a correction is a new one'); END;
CREATE TABLE award           (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, decision_id TEXT REFERENCES decision(id),
                              round_id TEXT NOT NULL REFERENCES funding_round(id), farm_id TEXT NOT NULL REFERENCES farm(id), house_id TEXT NOT NULL REFERENCES house(id), option_id TEXT NOT NULL,
                              state TEXT NOT NULL, grant_cap_cents BIGINT NOT NULL, grant_share DOUBLE PRECISION NOT NULL);
CREATE INDEX award_round ON award(round_id);
CREATE INDEX award_farm ON award(farm_id);
CREATE INDEX award_house ON award(house_id);
CREATE TABLE milestone       (award_id TEXT NOT NULL REFERENCES award(id), kind TEXT NOT NULL, due_on TEXT NOT NULL, done_on TEXT, PRIMARY KEY (award_id, kind));
DROP VIEW item_scope;
-- a round is the committee's: an empty farm keeps it from viewers who are limited to farms, an absent one would show it to them
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
      WHEN 'funding_round' THEN ''
      WHEN 'award' THEN (SELECT x.farm_id FROM award x WHERE x.id = h.item_id)
    END AS farm_id
  FROM head h;
