-- When somebody is called to look at a dough, min: folds in bulk, and what rests, cools or is retarded, with the longest that
-- it waits. Nobody is called for what a bakery has not said.
ALTER TABLE bakery
    ADD COLUMN fold_every_min SMALLINT,
    ADD COLUMN rest_look_min SMALLINT,
    ADD COLUMN rest_most_min SMALLINT,
    ADD COLUMN cool_look_min SMALLINT,
    ADD COLUMN cool_most_min SMALLINT,
    ADD COLUMN retard_look_min SMALLINT,
    ADD COLUMN retard_most_min SMALLINT;
ALTER TABLE bakery
    ADD CONSTRAINT bakery_fold_range CHECK (fold_every_min BETWEEN 1 AND 2880),
    ADD CONSTRAINT bakery_rest_in_order CHECK (
        (rest_look_min IS NULL AND rest_most_min IS NULL)
        OR (rest_look_min IS NOT NULL AND rest_most_min IS NOT NULL AND rest_look_min >= 1 AND rest_most_min > rest_look_min AND rest_most_min <= 2880)
    ),
    ADD CONSTRAINT bakery_cool_in_order CHECK (
        (cool_look_min IS NULL AND cool_most_min IS NULL)
        OR (cool_look_min IS NOT NULL AND cool_most_min IS NOT NULL AND cool_look_min >= 1 AND cool_most_min > cool_look_min AND cool_most_min <= 2880)
    ),
    ADD CONSTRAINT bakery_retard_in_order CHECK (
        (retard_look_min IS NULL AND retard_most_min IS NULL)
        OR (retard_look_min IS NOT NULL AND retard_most_min IS NOT NULL AND retard_look_min >= 1 AND retard_most_min > retard_look_min AND retard_most_min <= 2880)
    );
