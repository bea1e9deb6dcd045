CREATE TABLE statement       (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, farm_id TEXT NOT NULL REFERENCES farm(id), year BIGINT NOT NULL);
CREATE UNIQUE INDEX statement_year ON statement(farm_id, year) WHERE live = 1;
CREATE TABLE loan_case       (id TEXT PRIMARY KEY REFERENCES head(item_id), coop_id TEXT NOT NULL REFERENCES coop(id), live BIGINT NOT NULL, name TEXT NOT NULL, name_key TEXT NOT NULL,
                              farm_id TEXT NOT NULL REFERENCES farm(id), house_id TEXT NOT NULL REFERENCES house(id), option_id TEXT NOT NULL, state TEXT NOT NULL, amount_cents BIGINT NOT NULL);
CREATE INDEX loan_case_farm ON loan_case(farm_id);
CREATE INDEX loan_case_house ON loan_case(house_id);
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
      WHEN 'funding_round' THEN ''
      WHEN 'award' THEN (SELECT x.farm_id FROM award x WHERE x.id = h.item_id)
      WHEN 'statement' THEN (SELECT x.farm_id FROM statement x WHERE x.id = h.item_id)
      WHEN 'loan_case' THEN (SELECT x.farm_id FROM loan_case x WHERE x.id = h.item_id)
    END AS farm_id
  FROM head h;
