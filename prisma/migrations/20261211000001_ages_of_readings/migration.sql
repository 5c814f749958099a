-- When a dough came out of the oven: its other moves take the place of the moment of the last one.
ALTER TABLE batch ADD COLUMN baked_at TIMESTAMPTZ(3);

-- The record says it of the doughs that there are, but for those that were read from a file and those that went back in.
ALTER TABLE batch DISABLE TRIGGER batch_moves;
UPDATE batch b SET baked_at = moved.at
FROM (
    SELECT DISTINCT ON (e.bakery_id, e.target_id) e.bakery_id, e.target_id, e.action, e.at
    FROM audit_entry e
    WHERE (e.action = 'shifts.move-batch' AND e.entry_text::jsonb -> 'after' ->> 'state' = 'baked')
       OR (e.action = 'shifts.undo-move' AND e.entry_text::jsonb ->> 'before' = 'baked')
    ORDER BY e.bakery_id, e.target_id, e.number DESC
) moved
WHERE b.bakery_id = moved.bakery_id AND b.id = moved.target_id AND moved.action = 'shifts.move-batch'
  AND b.state IN ('baked', 'measured', 'lost', 'set_aside') AND b.begun_at IS NOT NULL;
ALTER TABLE batch ENABLE TRIGGER batch_moves;

ALTER TABLE batch ADD CONSTRAINT batch_baked_when_begun CHECK (baked_at IS NULL OR begun_at IS NOT NULL);

CREATE OR REPLACE FUNCTION "refuse_change_of_batch"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    moving text[] := ARRAY['state', 'state_why', 'pieces_made', 'pieces_good', 'begun_at', 'baked_at', 'done_at', 'moved_from', 'moved_at', 'moved_by_id', 'moved_revision', 'revision'];
    trial_state_now trial_state;
BEGIN
    -- Waits for an approval or an end that is being given, and not for another dough of the trial.
    SELECT t.state INTO trial_state_now FROM trial t WHERE t.bakery_id = OLD.bakery_id AND t.id = OLD.trial_id FOR KEY SHARE;
    IF trial_state_now NOT IN ('approved', 'baking', 'closed', 'stopped') THEN
        RETURN CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
    END IF;
    IF TG_OP = 'DELETE'
        OR to_jsonb(NEW) - moving IS DISTINCT FROM to_jsonb(OLD) - moving
        OR trial_state_now IN ('closed', 'stopped')
        OR NEW.revision < OLD.revision
        OR NOT "batch_may_move"(OLD.state, NEW.state)
    THEN
        RAISE EXCEPTION 'the batch stands as it is' USING ERRCODE = 'EV005';
    END IF;
    RETURN NEW;
END
$$;

-- At what age out of the oven a measure is read, h; without an end any later age will do, without a begin any at all.
ALTER TABLE measure ADD COLUMN age_least_h DOUBLE PRECISION;
ALTER TABLE measure ADD COLUMN age_most_h DOUBLE PRECISION;
ALTER TABLE measure ADD CONSTRAINT measure_age_in_order CHECK (
    (age_least_h IS NULL AND age_most_h IS NULL)
    OR (age_least_h IS NOT NULL AND age_least_h BETWEEN 0 AND 744 AND (age_most_h IS NULL OR (age_most_h > age_least_h AND age_most_h <= 744)))
);
-- As its method has said all along: an hour out of the oven.
UPDATE measure SET age_least_h = 1, age_most_h = 3 WHERE code = 'loaf-mass';
