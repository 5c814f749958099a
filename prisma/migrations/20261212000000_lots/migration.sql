-- Lots of an ingredient. What is said of one never changes, because weighings will rest on it: one that was written down
-- wrongly is ended, and the right one is another lot, which may then have its code.
-- CreateEnum
CREATE TYPE "lot_end" AS ENUM ('used_up', 'taken_out', 'mistaken');

-- CreateTable
CREATE TABLE "lot" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "code" TEXT NOT NULL,
    "received_on" DATE NOT NULL,
    "best_before" DATE,
    "strength_of" TEXT,
    "strength" DOUBLE PRECISION,
    "strength_unit" TEXT,
    "note" TEXT NOT NULL,
    "entered_by_id" UUID NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_why" "lot_end",
    "ended_by_id" UUID,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "lot_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateIndex
CREATE INDEX "lot_bakery_id_ingredient_id_received_on_idx" ON "lot"("bakery_id", "ingredient_id", "received_on");

-- CreateIndex
CREATE INDEX "lot_bakery_id_entered_by_id_idx" ON "lot"("bakery_id", "entered_by_id");

-- CreateIndex
CREATE INDEX "lot_bakery_id_ended_by_id_idx" ON "lot"("bakery_id", "ended_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "lot_bakery_id_ingredient_id_id_key" ON "lot"("bakery_id", "ingredient_id", "id");

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_bakery_id_entered_by_id_fkey" FOREIGN KEY ("bakery_id", "entered_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "lot" ADD CONSTRAINT "lot_bakery_id_ended_by_id_fkey" FOREIGN KEY ("bakery_id", "ended_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "lot"
    ADD CONSTRAINT "lot_code_length" CHECK (char_length(btrim("code")) BETWEEN 1 AND 60),
    ADD CONSTRAINT "lot_best_before_after_receipt" CHECK ("best_before" >= "received_on"),
    ADD CONSTRAINT "lot_strength_whole" CHECK (num_nulls("strength_of", "strength", "strength_unit") IN (0, 3)),
    ADD CONSTRAINT "lot_strength_range" CHECK ("strength" >= 0 AND "strength" <= 1000000000),
    ADD CONSTRAINT "lot_ended_whole" CHECK (num_nulls("ended_why", "ended_by_id", "ended_at") IN (0, 3));

-- Of an ingredient a code is there once among the lots that are in use; a supplier may send the same lot again.
CREATE UNIQUE INDEX "lot_code_once" ON "lot" ("bakery_id", "ingredient_id", lower("code")) WHERE "ended_at" IS NULL;

CREATE FUNCTION "refuse_lot_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'a lot stays as it was written down, and is ended once' USING ERRCODE = 'EV004';
END
$$;
CREATE TRIGGER "lot_facts_stay" BEFORE UPDATE ON "lot" FOR EACH ROW
    WHEN (OLD.ended_at IS NOT NULL
        OR (OLD.bakery_id, OLD.id, OLD.ingredient_id, OLD.code, OLD.received_on, OLD.best_before, OLD.strength_of, OLD.strength, OLD.strength_unit, OLD.note, OLD.entered_by_id, OLD.entered_at)
        IS DISTINCT FROM (NEW.bakery_id, NEW.id, NEW.ingredient_id, NEW.code, NEW.received_on, NEW.best_before, NEW.strength_of, NEW.strength, NEW.strength_unit, NEW.note, NEW.entered_by_id, NEW.entered_at))
    EXECUTE FUNCTION "refuse_lot_change"();
CREATE TRIGGER "lot_stays" BEFORE DELETE ON "lot" FOR EACH ROW EXECUTE FUNCTION "refuse_lot_change"();
