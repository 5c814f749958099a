-- What a trial's readings were when they were closed: all values in one text with its hash, and beside it one hash over
-- the rows themselves, by which every view tells whether they still are what was closed.
-- CreateTable
CREATE TABLE "closing" (
    "bakery_id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "rows_seal" TEXT NOT NULL,
    "closed_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "closing_pkey" PRIMARY KEY ("bakery_id","trial_id")
);

-- CreateIndex
CREATE INDEX "closing_bakery_id_closed_by_id_idx" ON "closing"("bakery_id", "closed_by_id");

-- AddForeignKey
ALTER TABLE "closing" ADD CONSTRAINT "closing_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "closing" ADD CONSTRAINT "closing_bakery_id_closed_by_id_fkey" FOREIGN KEY ("bakery_id", "closed_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "closing_only_grows" BEFORE UPDATE OR DELETE ON "closing" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "closing_never_emptied" BEFORE TRUNCATE ON "closing" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- One hash over the values of every dough and every reading of a trial, whatever their own hashes say. Moments are in
-- UTC and floating-point numbers in the shortest form that is read back the same, whatever the session's settings.
CREATE FUNCTION "seal_of_rows"(bakery uuid, trial uuid) RETURNS text LANGUAGE sql STABLE
SET search_path = public, pg_temp SET TimeZone = 'UTC' SET extra_float_digits = 1 SET DateStyle = 'ISO' AS $$
    SELECT encode(sha256(convert_to(
        coalesce((
            SELECT string_agg(jsonb_build_array(b.id, b.arm_id, b.mixing_day_id, b.planned_order, b.code, b.kind, b.state, b.state_why, b.pieces_made, b.pieces_good, b.begun_at, b.done_at)::text, E'\n' ORDER BY b.id)
            FROM batch b WHERE b.bakery_id = bakery AND b.trial_id = trial
        ), '') || E'\n\n' || coalesce((
            SELECT string_agg(jsonb_build_array(r.id, r.batch_id, r.measure_id, r.piece, r.factor_level, r.repeat, r.value, r.value_entered, r.unit_entered, r.person_id, r.taken_at, r.received_at, r.supersedes_id, r.reason, r.content_hash, r.plausible_least, r.plausible_most)::text, E'\n' ORDER BY r.id)
            FROM reading r WHERE r.bakery_id = bakery AND r.trial_id = trial
        ), ''), 'UTF8')), 'hex')
$$;

-- No reading comes to a trial that has ended, whoever writes it; otherwise as it was.
CREATE OR REPLACE FUNCTION "reading_takes_place"() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
    IF EXISTS (
        SELECT 1 FROM (SELECT DISTINCT bakery_id, trial_id FROM added) AS written
        JOIN trial ON trial.bakery_id = written.bakery_id AND trial.id = written.trial_id
        WHERE trial.state IN ('closed', 'stopped')
    ) THEN
        RAISE EXCEPTION 'the readings are closed' USING ERRCODE = 'EV007';
    END IF;
    IF EXISTS (SELECT 1 FROM added WHERE supersedes_id IS NOT NULL) THEN
        DELETE FROM reading_place WHERE (bakery_id, reading_id) IN (SELECT bakery_id, supersedes_id FROM added WHERE supersedes_id IS NOT NULL);
    END IF;
    INSERT INTO reading_place (bakery_id, reading_id, batch_id, measure_id, piece, factor_level, repeat)
    SELECT bakery_id, id, batch_id, measure_id, piece, factor_level, repeat FROM added
    WHERE (bakery_id, id) NOT IN (SELECT bakery_id, supersedes_id FROM added WHERE supersedes_id IS NOT NULL);
    RETURN NULL;
END
$$;
