-- After how many minutes without a touch nobody is on a tablet any more, and after how many hours the PIN is asked again.
ALTER TABLE bakery
    ADD COLUMN station_idle_min SMALLINT NOT NULL DEFAULT 10,
    ADD COLUMN pin_lasts_h SMALLINT NOT NULL DEFAULT 4;
ALTER TABLE bakery
    ALTER COLUMN station_idle_min DROP DEFAULT,
    ALTER COLUMN pin_lasts_h DROP DEFAULT,
    ADD CONSTRAINT bakery_station_idle_within_bounds CHECK (station_idle_min BETWEEN 2 AND 60),
    ADD CONSTRAINT bakery_pin_lasts_within_bounds CHECK (pin_lasts_h BETWEEN 1 AND 12);
