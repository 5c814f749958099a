-- A lot that somebody weighed from before the stores knew of it stands there to be confirmed. Who said so and with which
-- weighing stays; it is confirmed once, with its days, or found to be another lot, and then both codes stay.
ALTER TYPE "lot_end" ADD VALUE 'other_lot';

ALTER TABLE "lot"
    ADD COLUMN "said_with_id" UUID,
    ADD COLUMN "station_id" UUID,
    ADD COLUMN "confirmed_by_id" UUID,
    ADD COLUMN "confirmed_at" TIMESTAMPTZ(3),
    ADD COLUMN "same_as_id" UUID;

-- CreateIndex
CREATE INDEX "lot_bakery_id_ingredient_id_said_with_id_idx" ON "lot"("bakery_id", "ingredient_id", "said_with_id");

-- CreateIndex
CREATE INDEX "lot_bakery_id_station_id_idx" ON "lot"("bakery_id", "station_id");

-- CreateIndex
CREATE INDEX "lot_bakery_id_confirmed_by_id_idx" ON "lot"("bakery_id", "confirmed_by_id");

-- CreateIndex
CREATE INDEX "lot_bakery_id_ingredient_id_same_as_id_idx" ON "lot"("bakery_id", "ingredient_id", "same_as_id");

-- The desk asks for them at each look.
CREATE INDEX "lot_to_confirm" ON "lot"("bakery_id", "entered_at") WHERE "said_with_id" IS NOT NULL AND "confirmed_at" IS NULL AND "ended_at" IS NULL;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_bakery_id_ingredient_id_said_with_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id", "said_with_id") REFERENCES "weighing"("bakery_id", "ingredient_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_bakery_id_station_id_fkey" FOREIGN KEY ("bakery_id", "station_id") REFERENCES "station"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_bakery_id_confirmed_by_id_fkey" FOREIGN KEY ("bakery_id", "confirmed_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_bakery_id_ingredient_id_same_as_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id", "same_as_id") REFERENCES "lot"("bakery_id", "ingredient_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "lot"
    ADD CONSTRAINT "lot_confirmed_whole" CHECK (num_nulls("confirmed_by_id", "confirmed_at") IN (0, 2)),
    ADD CONSTRAINT "lot_confirmed_that_was_said" CHECK ("said_with_id" IS NOT NULL OR num_nonnulls("station_id", "confirmed_at", "same_as_id") = 0),
    ADD CONSTRAINT "lot_said_without_days" CHECK ("said_with_id" IS NULL OR "confirmed_at" IS NOT NULL OR "best_before" IS NULL),
    -- As text, because a value of an enum is of use only once its migration is over.
    ADD CONSTRAINT "lot_same_as_another" CHECK (("same_as_id" IS NOT NULL) = ("ended_why" IS NOT NULL AND "ended_why"::text = 'other_lot')),
    ADD CONSTRAINT "lot_not_same_as_itself" CHECK ("same_as_id" <> "id");

-- Its days are said when it is confirmed: until then `received_on` is the day on which it stood on the bench.
DROP TRIGGER "lot_facts_stay" ON "lot";
CREATE TRIGGER "lot_facts_stay" BEFORE UPDATE ON "lot" FOR EACH ROW
    WHEN (OLD.ended_at IS NOT NULL
        OR (OLD.bakery_id, OLD.id, OLD.ingredient_id, OLD.code, OLD.strength_of, OLD.strength, OLD.strength_unit, OLD.note, OLD.entered_by_id, OLD.entered_at, OLD.said_with_id, OLD.station_id)
        IS DISTINCT FROM (NEW.bakery_id, NEW.id, NEW.ingredient_id, NEW.code, NEW.strength_of, NEW.strength, NEW.strength_unit, NEW.note, NEW.entered_by_id, NEW.entered_at, NEW.said_with_id, NEW.station_id)
        OR ((OLD.received_on, OLD.best_before, OLD.confirmed_by_id, OLD.confirmed_at)
            IS DISTINCT FROM (NEW.received_on, NEW.best_before, NEW.confirmed_by_id, NEW.confirmed_at)
            AND NOT (OLD.said_with_id IS NOT NULL AND OLD.confirmed_at IS NULL AND NEW.confirmed_at IS NOT NULL)))
    EXECUTE FUNCTION "refuse_lot_change"();

-- The code as it was typed at the bench; none where the lot was chosen.
ALTER TABLE "weighing_lot" ADD COLUMN "code_entered" TEXT;
ALTER TABLE "weighing_lot" ADD CONSTRAINT "weighing_lot_code_length" CHECK (char_length(btrim("code_entered")) BETWEEN 1 AND 60);

-- A photo of a label is of an ingredient and of the code that was typed beside it, and of no dough: it would tell which.
ALTER TABLE "photo"
    ALTER COLUMN "trial_id" DROP NOT NULL,
    ALTER COLUMN "batch_id" DROP NOT NULL,
    ADD COLUMN "ingredient_id" UUID,
    ADD COLUMN "lot_code" TEXT;
ALTER TABLE "coming_photo"
    ALTER COLUMN "trial_id" DROP NOT NULL,
    ALTER COLUMN "batch_id" DROP NOT NULL,
    ADD COLUMN "ingredient_id" UUID,
    ADD COLUMN "lot_code" TEXT;

-- CreateIndex
CREATE INDEX "photo_bakery_id_ingredient_id_idx" ON "photo"("bakery_id", "ingredient_id");

-- CreateIndex
CREATE INDEX "coming_photo_bakery_id_ingredient_id_idx" ON "coming_photo"("bakery_id", "ingredient_id");

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "coming_photo" ADD CONSTRAINT "coming_photo_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "photo" ADD CONSTRAINT "photo_of_dough_or_label" CHECK (
    ("batch_id" IS NOT NULL AND "trial_id" IS NOT NULL AND num_nonnulls("ingredient_id", "lot_code") = 0)
    OR (num_nonnulls("batch_id", "trial_id", "piece") = 0 AND "ingredient_id" IS NOT NULL AND "lot_code" IS NOT NULL AND char_length(btrim("lot_code")) BETWEEN 1 AND 60));
ALTER TABLE "coming_photo" ADD CONSTRAINT "coming_photo_of_dough_or_label" CHECK (
    ("batch_id" IS NOT NULL AND "trial_id" IS NOT NULL AND num_nonnulls("ingredient_id", "lot_code") = 0)
    OR (num_nonnulls("batch_id", "trial_id", "piece") = 0 AND "ingredient_id" IS NOT NULL AND "lot_code" IS NOT NULL AND char_length(btrim("lot_code")) BETWEEN 1 AND 60));
