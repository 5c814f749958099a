-- What was done about doughs and mixing days that were lost, while their trial is open: a fact each, in the order in which
-- it was done. The doughs and days that a repair makes are rows like any others; the plan stays as it was approved.
-- CreateEnum
CREATE TYPE "repair_kind" AS ENUM ('bake_again', 'swap', 'add_day');

-- CreateTable
CREATE TABLE "repair" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "kind" "repair_kind" NOT NULL,
    "batch_id" UUID,
    "other_batch_id" UUID,
    "day_id" UUID,
    "other_day_id" UUID,
    "why" TEXT,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "repair_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateIndex
CREATE INDEX "repair_bakery_id_trial_id_batch_id_idx" ON "repair"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "repair_bakery_id_trial_id_other_batch_id_idx" ON "repair"("bakery_id", "trial_id", "other_batch_id");

-- CreateIndex
CREATE INDEX "repair_bakery_id_trial_id_day_id_idx" ON "repair"("bakery_id", "trial_id", "day_id");

-- CreateIndex
CREATE INDEX "repair_bakery_id_trial_id_other_day_id_idx" ON "repair"("bakery_id", "trial_id", "other_day_id");

-- CreateIndex
CREATE INDEX "repair_bakery_id_person_id_idx" ON "repair"("bakery_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "repair_bakery_id_trial_id_number_key" ON "repair"("bakery_id", "trial_id", "number");

-- AddForeignKey
ALTER TABLE "repair" ADD CONSTRAINT "repair_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "repair" ADD CONSTRAINT "repair_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "repair" ADD CONSTRAINT "repair_bakery_id_trial_id_other_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "other_batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "repair" ADD CONSTRAINT "repair_bakery_id_trial_id_day_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "day_id") REFERENCES "mixing_day"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "repair" ADD CONSTRAINT "repair_bakery_id_trial_id_other_day_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "other_day_id") REFERENCES "mixing_day"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "repair" ADD CONSTRAINT "repair_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "repair"
    ADD CONSTRAINT "repair_number_range" CHECK ("number" >= 1),
    ADD CONSTRAINT "repair_of_its_kind" CHECK (CASE "kind"
        WHEN 'add_day' THEN num_nulls("day_id", "other_day_id") = 0 AND num_nonnulls("batch_id", "other_batch_id") = 0
        ELSE num_nulls("batch_id", "other_batch_id") = 0 AND num_nonnulls("day_id", "other_day_id") = 0
    END),
    ADD CONSTRAINT "repair_of_two" CHECK ("batch_id" <> "other_batch_id" AND "day_id" <> "other_day_id"),
    ADD CONSTRAINT "repair_swap_says_why" CHECK ("kind" <> 'swap' OR coalesce("why", '') <> '');

-- A dough is baked again once, and a mixing day is added for another once; what was made has been made once.
CREATE UNIQUE INDEX "repair_baked_again_once" ON "repair"("bakery_id", "batch_id") WHERE "kind" = 'bake_again';
CREATE UNIQUE INDEX "repair_dough_made_once" ON "repair"("bakery_id", "other_batch_id") WHERE "kind" = 'bake_again';
CREATE UNIQUE INDEX "repair_day_added_once" ON "repair"("bakery_id", "day_id") WHERE "kind" = 'add_day';
CREATE UNIQUE INDEX "repair_day_made_once" ON "repair"("bakery_id", "other_day_id") WHERE "kind" = 'add_day';

CREATE TRIGGER "repair_only_grows" BEFORE UPDATE OR DELETE ON "repair" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "repair_never_emptied" BEFORE TRUNCATE ON "repair" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- Nothing is repaired once the readings are closed, whoever writes it.
CREATE FUNCTION "refuse_repair_of_closed"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    state_now trial_state;
BEGIN
    -- Waits for an end that is being given.
    SELECT t.state INTO state_now FROM trial t WHERE t.bakery_id = NEW.bakery_id AND t.id = NEW.trial_id FOR KEY SHARE;
    IF state_now IN ('closed', 'stopped') THEN
        RAISE EXCEPTION 'the readings are closed' USING ERRCODE = 'EV007';
    END IF;
    RETURN NEW;
END
$$;

CREATE TRIGGER "repair_while_open" BEFORE INSERT ON "repair" FOR EACH ROW EXECUTE FUNCTION "refuse_repair_of_closed"();
