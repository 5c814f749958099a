-- AlterEnum
ALTER TYPE "equipment_kind" ADD VALUE 'tap_water';

-- AlterTable
-- Doses that are there say how much; trials that are there say their tap.
ALTER TABLE "arm_dose" ADD COLUMN     "all_of_it" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "trial" ALTER COLUMN "tap_temp_c" DROP NOT NULL;

-- CreateTable
CREATE TABLE "trial_line" (
    "bakery_id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "stage_kind" "stage_kind" NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "may_move" BOOLEAN,
    "scale_id" UUID,

    CONSTRAINT "trial_line_pkey" PRIMARY KEY ("bakery_id","trial_id","stage_kind","ingredient_id")
);

-- CreateIndex
CREATE INDEX "trial_line_bakery_id_ingredient_id_idx" ON "trial_line"("bakery_id", "ingredient_id");

-- CreateIndex
CREATE INDEX "trial_line_bakery_id_scale_id_idx" ON "trial_line"("bakery_id", "scale_id");

-- AddForeignKey
ALTER TABLE "trial_line" ADD CONSTRAINT "trial_line_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial_line" ADD CONSTRAINT "trial_line_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial_line" ADD CONSTRAINT "trial_line_bakery_id_scale_id_fkey" FOREIGN KEY ("bakery_id", "scale_id") REFERENCES "equipment"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- ---- Added by hand ----

-- A new value of an enum cannot be used in the transaction that adds it, so kinds are compared as text.
ALTER TABLE "equipment"
    ADD CONSTRAINT "equipment_tap_water_whole" CHECK ("kind"::text <> 'tap_water' OR ("temp_c" IS NOT NULL AND "temp_c" BETWEEN 0 AND 40));

-- 'All of it' is said of what another takes the place of, and has no amount beside it.
ALTER TABLE "arm_dose"
    DROP CONSTRAINT "arm_dose_value_range",
    ADD CONSTRAINT "arm_dose_value_range" CHECK (
        CASE WHEN "all_of_it" THEN "how" = 'in_place' AND "value" = 0
            ELSE CASE "how" WHEN 'more' THEN "value" <> 0 WHEN 'in_all' THEN "value" >= 0 ELSE "value" > 0 END
        END
    );

-- A row says something; lines of pre-ferments, scalds and soakers never move.
ALTER TABLE "trial_line"
    ADD CONSTRAINT "trial_line_says_something" CHECK ("may_move" IS NOT NULL OR "scale_id" IS NOT NULL),
    ADD CONSTRAINT "trial_line_moves_in_final_dough" CHECK ("may_move" IS NULL OR "stage_kind" = 'final_dough');

-- What was chosen is part of the plan, so it is frozen with it.
CREATE FUNCTION "refuse_change_of_trial_line"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF (TG_OP <> 'INSERT' AND "plan_is_approved"(OLD.bakery_id, OLD.trial_id)) OR (TG_OP <> 'DELETE' AND "plan_is_approved"(NEW.bakery_id, NEW.trial_id)) THEN
        RAISE EXCEPTION 'the plan is approved' USING ERRCODE = 'EV003';
    END IF;
    RETURN CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
END
$$;
CREATE TRIGGER "trial_line_frozen" BEFORE INSERT OR UPDATE OR DELETE ON "trial_line" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_trial_line"();
CREATE TRIGGER "trial_line_never_emptied" BEFORE TRUNCATE ON "trial_line" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
