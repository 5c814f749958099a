-- A cause that was found later, by an object that can be shown, and the second person who signed it.
-- CreateEnum
CREATE TYPE "found_object" AS ENUM ('ingredient_left', 'tasted', 'stock_count', 'other');

-- CreateTable
CREATE TABLE "found_cause" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "object" "found_object" NOT NULL,
    "what" TEXT NOT NULL,
    "found_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "found_cause_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "found_cause_what_given" CHECK ("what" <> '')
);

-- CreateTable
CREATE TABLE "found_cause_signature" (
    "bakery_id" UUID NOT NULL,
    "found_cause_id" UUID NOT NULL,
    "found_by_id" UUID NOT NULL,
    "signs_as" "signs_as" NOT NULL,
    "signed_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "found_cause_signature_pkey" PRIMARY KEY ("bakery_id","found_cause_id"),
    CONSTRAINT "found_cause_signature_by_a_second" CHECK ("signed_by_id" <> "found_by_id" OR "signs_as" = 'alone'),
    CONSTRAINT "found_cause_signature_signs_as" CHECK ("signs_as" IN ('second_person', 'alone'))
);

-- CreateIndex
CREATE INDEX "found_cause_bakery_id_trial_id_batch_id_idx" ON "found_cause"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "found_cause_bakery_id_found_by_id_idx" ON "found_cause"("bakery_id", "found_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "found_cause_bakery_id_id_found_by_id_key" ON "found_cause"("bakery_id", "id", "found_by_id");

-- CreateIndex
CREATE INDEX "found_cause_signature_bakery_id_signed_by_id_idx" ON "found_cause_signature"("bakery_id", "signed_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "found_cause_signature_bakery_id_found_cause_id_found_by_id_key" ON "found_cause_signature"("bakery_id", "found_cause_id", "found_by_id");

-- AddForeignKey
ALTER TABLE "found_cause" ADD CONSTRAINT "found_cause_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "found_cause" ADD CONSTRAINT "found_cause_bakery_id_found_by_id_fkey" FOREIGN KEY ("bakery_id", "found_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "found_cause_signature" ADD CONSTRAINT "found_cause_signature_bakery_id_found_cause_id_found_by_id_fkey" FOREIGN KEY ("bakery_id", "found_cause_id", "found_by_id") REFERENCES "found_cause"("bakery_id", "id", "found_by_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "found_cause_signature" ADD CONSTRAINT "found_cause_signature_bakery_id_signed_by_id_fkey" FOREIGN KEY ("bakery_id", "signed_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "found_cause_only_grows" BEFORE UPDATE OR DELETE ON "found_cause" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "found_cause_never_emptied" BEFORE TRUNCATE ON "found_cause" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "found_cause_signature_only_grows" BEFORE UPDATE OR DELETE ON "found_cause_signature" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "found_cause_signature_never_emptied" BEFORE TRUNCATE ON "found_cause_signature" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- As before, and set aside once measured: for a cause that was found later, as the trigger below asks.
CREATE OR REPLACE FUNCTION "batch_may_move"(before batch_state, after batch_state) RETURNS boolean LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE before
        WHEN 'waiting' THEN true
        WHEN 'weighing' THEN after <> 'not_baked'
        WHEN 'in_work' THEN after NOT IN ('waiting', 'not_baked')
        WHEN 'baked' THEN after NOT IN ('waiting', 'weighing', 'not_baked')
        WHEN 'measured' THEN after IN ('measured', 'baked', 'set_aside')
        WHEN 'lost' THEN after NOT IN ('set_aside', 'measured', 'not_baked')
        WHEN 'set_aside' THEN after NOT IN ('lost', 'measured', 'not_baked')
        WHEN 'not_baked' THEN after IN ('not_baked', 'waiting')
    END
$$;

-- A measured batch is out of the comparison only for what two signed.
CREATE FUNCTION "refuse_unsigned_set_aside"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF NOT EXISTS (
        SELECT 1 FROM found_cause c
        JOIN found_cause_signature s ON s.bakery_id = c.bakery_id AND s.found_cause_id = c.id
        WHERE c.bakery_id = NEW.bakery_id AND c.trial_id = NEW.trial_id AND c.batch_id = NEW.id
    ) THEN
        RAISE EXCEPTION 'the batch stands as it is' USING ERRCODE = 'EV005';
    END IF;
    RETURN NEW;
END
$$;
CREATE TRIGGER "batch_set_aside_when_signed" BEFORE UPDATE ON "batch" FOR EACH ROW
    WHEN (OLD.state = 'measured' AND NEW.state = 'set_aside') EXECUTE FUNCTION "refuse_unsigned_set_aside"();
