-- What was weighed, line by line of the plan. A line has one first weighing, and each that was wrong one that takes its
-- place: whoever is second by a moment is refused, and nobody's is overwritten.
-- CreateEnum
CREATE TYPE "weighing_part" AS ENUM ('line', 'dose', 'premix');

-- CreateEnum
CREATE TYPE "weighing_how" AS ENUM ('ticked', 'weighed', 'left_out');

-- CreateTable
CREATE TABLE "weighing" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "stage_id" UUID NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "part" "weighing_part" NOT NULL,
    "how" "weighing_how" NOT NULL,
    "mass_g" DOUBLE PRECISION,
    "mass_entered" TEXT,
    "unit_entered" TEXT,
    "person_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "supersedes_id" UUID,
    "reason" TEXT,
    "content_hash" TEXT NOT NULL,

    CONSTRAINT "weighing_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "weighing_mass_where_weighed" CHECK (("how" = 'weighed') = ("mass_g" IS NOT NULL) AND ("mass_g" IS NULL) = ("mass_entered" IS NULL) AND ("mass_g" IS NULL) = ("unit_entered" IS NULL)),
    CONSTRAINT "weighing_mass_finite" CHECK ("mass_g" >= 0 AND "mass_g" < 'Infinity'),
    CONSTRAINT "weighing_reason_for_correction" CHECK (("supersedes_id" IS NULL) = ("reason" IS NULL) AND "reason" <> '')
);

CREATE UNIQUE INDEX "weighing_first_once" ON "weighing" ("bakery_id", "batch_id", "stage_id", "ingredient_id", "part") WHERE "supersedes_id" IS NULL;
CREATE UNIQUE INDEX "weighing_superseded_once" ON "weighing" ("bakery_id", "supersedes_id") WHERE "supersedes_id" IS NOT NULL;

-- CreateIndex
CREATE INDEX "weighing_bakery_id_trial_id_batch_id_idx" ON "weighing"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "weighing_bakery_id_stage_id_idx" ON "weighing"("bakery_id", "stage_id");

-- CreateIndex
CREATE INDEX "weighing_bakery_id_ingredient_id_idx" ON "weighing"("bakery_id", "ingredient_id");

-- CreateIndex
CREATE INDEX "weighing_bakery_id_person_id_idx" ON "weighing"("bakery_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "weighing_bakery_id_batch_id_stage_id_ingredient_id_part_id_key" ON "weighing"("bakery_id", "batch_id", "stage_id", "ingredient_id", "part", "id");

-- CreateIndex
CREATE INDEX "weighing_supersedes_idx" ON "weighing"("bakery_id", "batch_id", "stage_id", "ingredient_id", "part", "supersedes_id");

-- AddForeignKey
ALTER TABLE "weighing" ADD CONSTRAINT "weighing_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "weighing" ADD CONSTRAINT "weighing_bakery_id_stage_id_fkey" FOREIGN KEY ("bakery_id", "stage_id") REFERENCES "formula_stage"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "weighing" ADD CONSTRAINT "weighing_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "weighing" ADD CONSTRAINT "weighing_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "weighing" ADD CONSTRAINT "weighing_bakery_id_batch_id_stage_id_ingredient_id_part_su_fkey" FOREIGN KEY ("bakery_id", "batch_id", "stage_id", "ingredient_id", "part", "supersedes_id") REFERENCES "weighing"("bakery_id", "batch_id", "stage_id", "ingredient_id", "part", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "weighing_only_grows" BEFORE UPDATE OR DELETE ON "weighing" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "weighing_never_emptied" BEFORE TRUNCATE ON "weighing" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- Nothing that was weighed comes to a trial that has ended, whoever writes it.
CREATE FUNCTION "weighing_before_closing"() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
    IF EXISTS (
        SELECT 1 FROM (SELECT DISTINCT bakery_id, trial_id FROM added) AS written
        JOIN trial ON trial.bakery_id = written.bakery_id AND trial.id = written.trial_id
        WHERE trial.state IN ('closed', 'stopped')
    ) THEN
        RAISE EXCEPTION 'the readings are closed' USING ERRCODE = 'EV007';
    END IF;
    RETURN NULL;
END
$$;

CREATE TRIGGER "weighing_before_closing" AFTER INSERT ON "weighing" REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION "weighing_before_closing"();

-- As before, and over what was weighed behind it. A trial of which nothing was weighed has the seal that it had.
CREATE OR REPLACE FUNCTION "seal_of_rows"(bakery uuid, trial uuid) RETURNS text LANGUAGE sql STABLE
SET search_path = public, pg_temp SET TimeZone = 'UTC' SET extra_float_digits = 1 SET DateStyle = 'ISO' AS $$
    SELECT encode(sha256(convert_to(
        coalesce((
            SELECT string_agg(jsonb_build_array(b.id, b.arm_id, b.mixing_day_id, b.planned_order, b.code, b.kind, b.state, b.state_why, b.pieces_made, b.pieces_good, b.begun_at, b.done_at)::text, E'\n' ORDER BY b.id)
            FROM batch b WHERE b.bakery_id = bakery AND b.trial_id = trial
        ), '') || E'\n\n' || coalesce((
            SELECT string_agg(jsonb_build_array(r.id, r.batch_id, r.measure_id, r.piece, r.factor_level, r.repeat, r.value, r.value_entered, r.unit_entered, r.person_id, r.taken_at, r.received_at, r.supersedes_id, r.reason, r.content_hash, r.plausible_least, r.plausible_most)::text, E'\n' ORDER BY r.id)
            FROM reading r WHERE r.bakery_id = bakery AND r.trial_id = trial
        ), '') || coalesce(E'\n\n' || (
            SELECT string_agg(jsonb_build_array(w.id, w.batch_id, w.stage_id, w.ingredient_id, w.part, w.how, w.mass_g, w.mass_entered, w.unit_entered, w.person_id, w.taken_at, w.received_at, w.supersedes_id, w.reason, w.content_hash)::text, E'\n' ORDER BY w.id)
            FROM weighing w WHERE w.bakery_id = bakery AND w.trial_id = trial
        ), ''), 'UTF8')), 'hex')
$$;
