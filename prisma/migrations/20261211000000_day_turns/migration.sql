-- The hour, by the bakery's clock, at which one day's work ends and the next begins: 0 is midnight.
ALTER TABLE bakery ADD COLUMN day_turns_at_h SMALLINT NOT NULL DEFAULT 0;
ALTER TABLE bakery ALTER COLUMN day_turns_at_h DROP DEFAULT;
ALTER TABLE bakery ADD CONSTRAINT bakery_day_turns_in_the_night CHECK (day_turns_at_h BETWEEN 0 AND 11);
