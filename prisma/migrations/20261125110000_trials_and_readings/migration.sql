-- CreateEnum
CREATE TYPE "measure_level" AS ENUM ('batch', 'piece');

-- CreateEnum
CREATE TYPE "good_direction" AS ENUM ('larger', 'smaller', 'none');

-- CreateEnum
CREATE TYPE "trial_kind" AS ENUM ('gain', 'no_worse', 'same_as', 'which_dose', 'look_only');

-- CreateEnum
CREATE TYPE "trial_state" AS ENUM ('draft', 'proposed', 'approved', 'baking', 'closed', 'declined', 'stopped');

-- CreateEnum
CREATE TYPE "margin_unit" AS ENUM ('pct', 'unit');

-- CreateEnum
CREATE TYPE "held_total" AS ENUM ('dough_mass', 'water', 'fat', 'sugars', 'salt', 'protein', 'flour');

-- CreateEnum
CREATE TYPE "dose_basis" AS ENUM ('pct_flour', 'ppm_flour', 'g_per_kg_flour');

-- CreateEnum
CREATE TYPE "dose_of" AS ENUM ('product', 'active');

-- CreateEnum
CREATE TYPE "plan_verdict" AS ENUM ('approved', 'sent_back', 'declined');

-- CreateEnum
CREATE TYPE "batch_kind" AS ENUM ('dough', 'preparation');

-- CreateEnum
CREATE TYPE "batch_state" AS ENUM ('waiting', 'weighing', 'in_work', 'baked', 'measured', 'lost', 'set_aside');

-- CreateTable
CREATE TABLE "measure" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "code" TEXT,
    "name" TEXT NOT NULL,
    "unit" TEXT NOT NULL,
    "digits" INTEGER NOT NULL,
    "level" "measure_level" NOT NULL,
    "direction" "good_direction" NOT NULL,
    "derivation" TEXT,
    "plausible_least" DOUBLE PRECISION NOT NULL,
    "plausible_most" DOUBLE PRECISION NOT NULL,
    "repeats" INTEGER NOT NULL,
    "repeat_limit" DOUBLE PRECISION,
    "method" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "revision" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "measure_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "trial" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" "trial_kind" NOT NULL,
    "state" "trial_state" NOT NULL,
    "question" TEXT NOT NULL,
    "formula_id" UUID NOT NULL,
    "control_version_id" UUID NOT NULL,
    "measure_id" UUID NOT NULL,
    "margin" DOUBLE PRECISION NOT NULL,
    "margin_unit" "margin_unit" NOT NULL,
    "confidence_pct" DOUBLE PRECISION NOT NULL,
    "mixing_days" INTEGER NOT NULL,
    "batches_per_arm" INTEGER NOT NULL,
    "pieces_per_batch" INTEGER NOT NULL,
    "held_totals" "held_total"[],
    "factor_name" TEXT,
    "factor_levels" TEXT[],
    "scale_id" UUID,
    "mixer_id" UUID,
    "flour_temp_c" DOUBLE PRECISION NOT NULL,
    "room_temp_c" DOUBLE PRECISION NOT NULL,
    "tap_temp_c" DOUBLE PRECISION NOT NULL,
    "note" TEXT NOT NULL,
    "seed" TEXT NOT NULL,
    "proposed_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "proposed_at" TIMESTAMPTZ(3),
    "closed_at" TIMESTAMPTZ(3),
    "closed_why" TEXT,
    "plan_text" TEXT,
    "plan_hash" TEXT,
    "revision" INTEGER NOT NULL,

    CONSTRAINT "trial_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "arm" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "on_top" BOOLEAN NOT NULL,

    CONSTRAINT "arm_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "arm_dose" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "arm_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "basis" "dose_basis" NOT NULL,
    "dose_of" "dose_of" NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "arm_dose_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "arm_line" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "arm_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "stage_id" UUID NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "control_mass_g" DOUBLE PRECISION NOT NULL,
    "mass_g" DOUBLE PRECISION NOT NULL,
    "weighed_g" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "arm_line_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "plan_decision" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "verdict" "plan_verdict" NOT NULL,
    "person_id" UUID NOT NULL,
    "person_name" TEXT NOT NULL,
    "role" "role" NOT NULL,
    "meaning" TEXT NOT NULL,
    "note" TEXT NOT NULL,
    "plan_hash" TEXT NOT NULL,
    "by_proposer" BOOLEAN NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "plan_decision_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "mixing_day" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "day" DATE,

    CONSTRAINT "mixing_day_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "batch" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "kind" "batch_kind" NOT NULL,
    "arm_id" UUID NOT NULL,
    "mixing_day_id" UUID NOT NULL,
    "planned_order" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "clean_down_before" BOOLEAN NOT NULL,
    "state" "batch_state" NOT NULL,
    "state_why" TEXT,
    "pieces_made" INTEGER,
    "pieces_good" INTEGER,
    "begun_at" TIMESTAMPTZ(3),
    "done_at" TIMESTAMPTZ(3),
    "revision" INTEGER NOT NULL,

    CONSTRAINT "batch_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "reading" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "piece" INTEGER,
    "factor_level" TEXT,
    "measure_id" UUID NOT NULL,
    "repeat" INTEGER NOT NULL,
    "value" DOUBLE PRECISION NOT NULL,
    "value_entered" TEXT NOT NULL,
    "unit_entered" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "supersedes_id" UUID,
    "reason" TEXT,
    "content_hash" TEXT NOT NULL,

    CONSTRAINT "reading_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "measure_bakery_id_code_key" ON "measure"("bakery_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "measure_bakery_id_name_key" ON "measure"("bakery_id", "name");

-- CreateIndex
CREATE INDEX "trial_bakery_id_formula_id_idx" ON "trial"("bakery_id", "formula_id");

-- CreateIndex
CREATE INDEX "trial_bakery_id_control_version_id_idx" ON "trial"("bakery_id", "control_version_id");

-- CreateIndex
CREATE INDEX "trial_bakery_id_measure_id_idx" ON "trial"("bakery_id", "measure_id");

-- CreateIndex
CREATE INDEX "trial_bakery_id_scale_id_idx" ON "trial"("bakery_id", "scale_id");

-- CreateIndex
CREATE INDEX "trial_bakery_id_mixer_id_idx" ON "trial"("bakery_id", "mixer_id");

-- CreateIndex
CREATE INDEX "trial_bakery_id_proposed_by_id_idx" ON "trial"("bakery_id", "proposed_by_id");

-- CreateIndex
CREATE INDEX "trial_bakery_id_state_idx" ON "trial"("bakery_id", "state");

-- CreateIndex
CREATE UNIQUE INDEX "trial_bakery_id_number_key" ON "trial"("bakery_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "arm_bakery_id_trial_id_position_key" ON "arm"("bakery_id", "trial_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "arm_bakery_id_trial_id_id_key" ON "arm"("bakery_id", "trial_id", "id");

-- CreateIndex
CREATE INDEX "arm_dose_bakery_id_ingredient_id_idx" ON "arm_dose"("bakery_id", "ingredient_id");

-- CreateIndex
CREATE UNIQUE INDEX "arm_dose_bakery_id_arm_id_position_key" ON "arm_dose"("bakery_id", "arm_id", "position");

-- CreateIndex
CREATE INDEX "arm_line_bakery_id_stage_id_idx" ON "arm_line"("bakery_id", "stage_id");

-- CreateIndex
CREATE INDEX "arm_line_bakery_id_ingredient_id_idx" ON "arm_line"("bakery_id", "ingredient_id");

-- CreateIndex
CREATE UNIQUE INDEX "arm_line_bakery_id_arm_id_position_key" ON "arm_line"("bakery_id", "arm_id", "position");

-- CreateIndex
CREATE INDEX "plan_decision_bakery_id_trial_id_at_idx" ON "plan_decision"("bakery_id", "trial_id", "at");

-- CreateIndex
CREATE INDEX "plan_decision_bakery_id_person_id_idx" ON "plan_decision"("bakery_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "mixing_day_bakery_id_trial_id_number_key" ON "mixing_day"("bakery_id", "trial_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "mixing_day_bakery_id_trial_id_id_key" ON "mixing_day"("bakery_id", "trial_id", "id");

-- CreateIndex
CREATE INDEX "batch_bakery_id_trial_id_arm_id_idx" ON "batch"("bakery_id", "trial_id", "arm_id");

-- CreateIndex
CREATE INDEX "batch_bakery_id_trial_id_mixing_day_id_idx" ON "batch"("bakery_id", "trial_id", "mixing_day_id");

-- CreateIndex
CREATE UNIQUE INDEX "batch_bakery_id_trial_id_code_key" ON "batch"("bakery_id", "trial_id", "code");

-- CreateIndex
CREATE UNIQUE INDEX "batch_bakery_id_mixing_day_id_planned_order_key" ON "batch"("bakery_id", "mixing_day_id", "planned_order");

-- CreateIndex
CREATE UNIQUE INDEX "batch_bakery_id_trial_id_id_key" ON "batch"("bakery_id", "trial_id", "id");

-- CreateIndex
CREATE INDEX "reading_bakery_id_trial_id_batch_id_idx" ON "reading"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "reading_bakery_id_measure_id_idx" ON "reading"("bakery_id", "measure_id");

-- CreateIndex
CREATE INDEX "reading_bakery_id_person_id_idx" ON "reading"("bakery_id", "person_id");

-- CreateIndex
CREATE INDEX "reading_bakery_id_supersedes_id_idx" ON "reading"("bakery_id", "supersedes_id");

-- AddForeignKey
ALTER TABLE "measure" ADD CONSTRAINT "measure_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial" ADD CONSTRAINT "trial_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial" ADD CONSTRAINT "trial_bakery_id_formula_id_fkey" FOREIGN KEY ("bakery_id", "formula_id") REFERENCES "formula"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial" ADD CONSTRAINT "trial_bakery_id_control_version_id_fkey" FOREIGN KEY ("bakery_id", "control_version_id") REFERENCES "formula_version"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial" ADD CONSTRAINT "trial_bakery_id_measure_id_fkey" FOREIGN KEY ("bakery_id", "measure_id") REFERENCES "measure"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial" ADD CONSTRAINT "trial_bakery_id_scale_id_fkey" FOREIGN KEY ("bakery_id", "scale_id") REFERENCES "equipment"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial" ADD CONSTRAINT "trial_bakery_id_mixer_id_fkey" FOREIGN KEY ("bakery_id", "mixer_id") REFERENCES "equipment"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial" ADD CONSTRAINT "trial_bakery_id_proposed_by_id_fkey" FOREIGN KEY ("bakery_id", "proposed_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "arm" ADD CONSTRAINT "arm_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "arm_dose" ADD CONSTRAINT "arm_dose_bakery_id_arm_id_fkey" FOREIGN KEY ("bakery_id", "arm_id") REFERENCES "arm"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "arm_dose" ADD CONSTRAINT "arm_dose_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "arm_line" ADD CONSTRAINT "arm_line_bakery_id_arm_id_fkey" FOREIGN KEY ("bakery_id", "arm_id") REFERENCES "arm"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "arm_line" ADD CONSTRAINT "arm_line_bakery_id_stage_id_fkey" FOREIGN KEY ("bakery_id", "stage_id") REFERENCES "formula_stage"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "arm_line" ADD CONSTRAINT "arm_line_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "plan_decision" ADD CONSTRAINT "plan_decision_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "plan_decision" ADD CONSTRAINT "plan_decision_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "mixing_day" ADD CONSTRAINT "mixing_day_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "batch" ADD CONSTRAINT "batch_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "batch" ADD CONSTRAINT "batch_bakery_id_trial_id_arm_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "arm_id") REFERENCES "arm"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "batch" ADD CONSTRAINT "batch_bakery_id_trial_id_mixing_day_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "mixing_day_id") REFERENCES "mixing_day"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "reading" ADD CONSTRAINT "reading_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "reading" ADD CONSTRAINT "reading_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "reading" ADD CONSTRAINT "reading_bakery_id_measure_id_fkey" FOREIGN KEY ("bakery_id", "measure_id") REFERENCES "measure"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "reading" ADD CONSTRAINT "reading_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "reading" ADD CONSTRAINT "reading_bakery_id_supersedes_id_fkey" FOREIGN KEY ("bakery_id", "supersedes_id") REFERENCES "reading"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- From here on by hand: what the schema file cannot say.

ALTER TABLE "measure"
    ADD CONSTRAINT "measure_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 80 AND char_length("unit") BETWEEN 1 AND 20),
    ADD CONSTRAINT "measure_digits_range" CHECK ("digits" BETWEEN 0 AND 6),
    ADD CONSTRAINT "measure_plausible_range" CHECK ("plausible_most" > "plausible_least"),
    ADD CONSTRAINT "measure_repeats_range" CHECK ("repeats" BETWEEN 1 AND 10),
    ADD CONSTRAINT "measure_revision_range" CHECK ("revision" >= 1);

ALTER TABLE "trial"
    ADD CONSTRAINT "trial_question_length" CHECK (char_length(btrim("question")) BETWEEN 1 AND 300),
    ADD CONSTRAINT "trial_size_range" CHECK ("mixing_days" BETWEEN 1 AND 30 AND "batches_per_arm" BETWEEN 1 AND 12 AND "pieces_per_batch" BETWEEN 1 AND 100),
    ADD CONSTRAINT "trial_margin_range" CHECK ("margin" > 0),
    ADD CONSTRAINT "trial_confidence_range" CHECK ("confidence_pct" BETWEEN 50 AND 99.9),
    ADD CONSTRAINT "trial_temperatures_range" CHECK ("flour_temp_c" BETWEEN -20 AND 50 AND "room_temp_c" BETWEEN -10 AND 50 AND "tap_temp_c" BETWEEN 0 AND 60),
    ADD CONSTRAINT "trial_plan_whole" CHECK (("plan_text" IS NULL) = ("plan_hash" IS NULL) AND ("state" IN ('draft', 'declined') OR "plan_hash" IS NOT NULL)),
    ADD CONSTRAINT "trial_hash_form" CHECK ("plan_hash" ~ '^[0-9a-f]{64}$'),
    ADD CONSTRAINT "trial_revision_range" CHECK ("revision" >= 1);

ALTER TABLE "arm"
    ADD CONSTRAINT "arm_position_range" CHECK ("position" BETWEEN 0 AND 6),
    ADD CONSTRAINT "arm_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 80);

ALTER TABLE "arm_dose"
    ADD CONSTRAINT "arm_dose_value_range" CHECK ("value" > 0);

ALTER TABLE "arm_line"
    ADD CONSTRAINT "arm_line_mass_range" CHECK ("mass_g" >= 0 AND "weighed_g" >= 0 AND "control_mass_g" >= 0);

ALTER TABLE "plan_decision"
    ADD CONSTRAINT "plan_decision_hash_form" CHECK ("plan_hash" ~ '^[0-9a-f]{64}$'),
    ADD CONSTRAINT "plan_decision_note_length" CHECK (char_length("note") <= 2000 AND char_length("meaning") BETWEEN 1 AND 400);

ALTER TABLE "mixing_day"
    ADD CONSTRAINT "mixing_day_number_range" CHECK ("number" >= 1);

ALTER TABLE "batch"
    ADD CONSTRAINT "batch_code_form" CHECK ("code" ~ '^[1-9][0-9]{2}$'),
    ADD CONSTRAINT "batch_order_range" CHECK ("planned_order" >= 1),
    ADD CONSTRAINT "batch_pieces_range" CHECK ("pieces_made" BETWEEN 0 AND 10000 AND "pieces_good" BETWEEN 0 AND "pieces_made"),
    ADD CONSTRAINT "batch_ended_says_why" CHECK ("state" NOT IN ('lost', 'set_aside') OR "state_why" IS NOT NULL),
    ADD CONSTRAINT "batch_revision_range" CHECK ("revision" >= 1);

ALTER TABLE "reading"
    ADD CONSTRAINT "reading_piece_range" CHECK ("piece" BETWEEN 1 AND 10000),
    ADD CONSTRAINT "reading_repeat_range" CHECK ("repeat" BETWEEN 1 AND 20),
    ADD CONSTRAINT "reading_correction_whole" CHECK (("supersedes_id" IS NULL) = ("reason" IS NULL) AND "supersedes_id" <> "id"),
    ADD CONSTRAINT "reading_hash_form" CHECK ("content_hash" ~ '^[0-9a-f]{64}$');

CREATE TRIGGER "plan_decision_only_grows" BEFORE UPDATE OR DELETE ON "plan_decision" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "plan_decision_never_emptied" BEFORE TRUNCATE ON "plan_decision" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "reading_only_grows" BEFORE UPDATE OR DELETE ON "reading" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "reading_never_emptied" BEFORE TRUNCATE ON "reading" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- An approved plan is frozen: its arms, doses and masses, and what was declared before baking.
CREATE FUNCTION "refuse_change_of_approved"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    is_approved boolean;
BEGIN
    IF TG_TABLE_NAME = 'arm' THEN
        is_approved := (TG_OP <> 'INSERT' AND "plan_is_approved"(OLD.bakery_id, OLD.trial_id))
            OR (TG_OP <> 'DELETE' AND "plan_is_approved"(NEW.bakery_id, NEW.trial_id));
    ELSE
        is_approved := (TG_OP <> 'INSERT' AND "plan_of_arm_is_approved"(OLD.bakery_id, OLD.arm_id))
            OR (TG_OP <> 'DELETE' AND "plan_of_arm_is_approved"(NEW.bakery_id, NEW.arm_id));
    END IF;
    IF is_approved THEN
        RAISE EXCEPTION 'the plan is approved' USING ERRCODE = 'EV003';
    END IF;
    RETURN CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
END
$$;

-- FOR SHARE waits for an approval that is being given, and makes it wait.
CREATE FUNCTION "plan_is_approved"(in_bakery uuid, of_trial uuid) RETURNS boolean LANGUAGE plpgsql AS $$
DECLARE
    state_now trial_state;
BEGIN
    SELECT t.state INTO state_now FROM trial t WHERE t.bakery_id = in_bakery AND t.id = of_trial FOR SHARE;
    RETURN coalesce(state_now IN ('approved', 'baking', 'closed', 'stopped'), false);
END
$$;

CREATE FUNCTION "plan_of_arm_is_approved"(in_bakery uuid, of_arm uuid) RETURNS boolean LANGUAGE sql AS $$
    SELECT coalesce((SELECT "plan_is_approved"(a.bakery_id, a.trial_id) FROM arm a WHERE a.bakery_id = in_bakery AND a.id = of_arm), false)
$$;

CREATE FUNCTION "refuse_change_of_declared"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF TG_OP = 'DELETE' THEN
        IF OLD.state IN ('approved', 'baking', 'closed', 'stopped') THEN
            RAISE EXCEPTION 'the plan is approved' USING ERRCODE = 'EV003';
        END IF;
        RETURN OLD;
    END IF;
    -- A frozen plan never goes back to where it could be changed.
    IF OLD.state IN ('approved', 'baking', 'closed', 'stopped') AND NEW.state NOT IN ('approved', 'baking', 'closed', 'stopped') THEN
        RAISE EXCEPTION 'the plan is approved' USING ERRCODE = 'EV003';
    END IF;
    IF OLD.state IN ('approved', 'baking', 'closed', 'stopped') AND (
        NEW.kind, NEW.question, NEW.formula_id, NEW.control_version_id, NEW.measure_id, NEW.margin, NEW.margin_unit, NEW.confidence_pct,
        NEW.batches_per_arm, NEW.pieces_per_batch, NEW.held_totals, NEW.factor_name, NEW.factor_levels, NEW.seed, NEW.plan_text, NEW.plan_hash,
        NEW.proposed_by_id
    ) IS DISTINCT FROM (
        OLD.kind, OLD.question, OLD.formula_id, OLD.control_version_id, OLD.measure_id, OLD.margin, OLD.margin_unit, OLD.confidence_pct,
        OLD.batches_per_arm, OLD.pieces_per_batch, OLD.held_totals, OLD.factor_name, OLD.factor_levels, OLD.seed, OLD.plan_text, OLD.plan_hash,
        OLD.proposed_by_id
    ) THEN
        RAISE EXCEPTION 'the plan is approved' USING ERRCODE = 'EV003';
    END IF;
    RETURN NEW;
END
$$;

CREATE TRIGGER "arm_frozen" BEFORE INSERT OR UPDATE OR DELETE ON "arm" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_approved"();
CREATE TRIGGER "arm_dose_frozen" BEFORE INSERT OR UPDATE OR DELETE ON "arm_dose" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_approved"();
CREATE TRIGGER "arm_line_frozen" BEFORE INSERT OR UPDATE OR DELETE ON "arm_line" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_approved"();
CREATE TRIGGER "arm_never_emptied" BEFORE TRUNCATE ON "arm" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "arm_dose_never_emptied" BEFORE TRUNCATE ON "arm_dose" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "arm_line_never_emptied" BEFORE TRUNCATE ON "arm_line" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "trial_never_emptied" BEFORE TRUNCATE ON "trial" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "trial_declared_frozen" BEFORE UPDATE OR DELETE ON "trial" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_declared"();
