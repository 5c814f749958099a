-- What happened to a batch, noted before anybody read what decides.
-- CreateTable
CREATE TABLE "batch_cause" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "what" TEXT NOT NULL,
    "noticed_at" TIMESTAMPTZ(3) NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "batch_cause_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "batch_cause_what_given" CHECK ("what" <> ''),
    CONSTRAINT "batch_cause_noticed_before_noted" CHECK ("noticed_at" <= "at")
);

-- CreateIndex
CREATE INDEX "batch_cause_bakery_id_trial_id_batch_id_idx" ON "batch_cause"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "batch_cause_bakery_id_person_id_idx" ON "batch_cause"("bakery_id", "person_id");

-- AddForeignKey
ALTER TABLE "batch_cause" ADD CONSTRAINT "batch_cause_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "batch_cause" ADD CONSTRAINT "batch_cause_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "batch_cause_only_grows" BEFORE UPDATE OR DELETE ON "batch_cause" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "batch_cause_never_emptied" BEFORE TRUNCATE ON "batch_cause" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- Every end that is none of the plan's says why, also that of a dough which was not baked.
ALTER TABLE "batch"
    DROP CONSTRAINT "batch_ended_says_why",
    ADD CONSTRAINT "batch_ended_says_why" CHECK ("state" NOT IN ('lost', 'set_aside', 'not_baked') OR "state_why" IS NOT NULL),
    ADD CONSTRAINT "batch_not_baked_not_begun" CHECK ("state" <> 'not_baked' OR "begun_at" IS NULL),
    -- Not of batches that ended before there was another word for it: what a closed trial said stays what it said.
    ADD CONSTRAINT "batch_taken_out_begun" CHECK ("state" NOT IN ('lost', 'set_aside') OR "begun_at" IS NOT NULL) NOT VALID;

-- The moves of a batch: forwards, also over several steps at once (readings that were taken elsewhere), out as lost or set
-- aside before it is measured, or as not baked before it is begun, and one step back or back in, for a move that is undone.
CREATE OR REPLACE FUNCTION "batch_may_move"(before batch_state, after batch_state) RETURNS boolean LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE before
        WHEN 'waiting' THEN true
        WHEN 'weighing' THEN after <> 'not_baked'
        WHEN 'in_work' THEN after NOT IN ('waiting', 'not_baked')
        WHEN 'baked' THEN after NOT IN ('waiting', 'weighing', 'not_baked')
        WHEN 'measured' THEN after IN ('measured', 'baked')
        WHEN 'lost' THEN after NOT IN ('set_aside', 'measured', 'not_baked')
        WHEN 'set_aside' THEN after NOT IN ('lost', 'measured', 'not_baked')
        WHEN 'not_baked' THEN after IN ('not_baked', 'waiting')
    END
$$;
