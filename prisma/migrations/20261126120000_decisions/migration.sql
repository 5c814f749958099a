-- CreateEnum
CREATE TYPE "decision_outcome" AS ENUM ('change', 'keep');

-- AlterTable
-- Bakeries that are there get 1 %; from then on whoever makes one says it.
ALTER TABLE "bakery" ADD COLUMN     "cost_change_limit_pct" DOUBLE PRECISION NOT NULL DEFAULT 1;
ALTER TABLE "bakery" ALTER COLUMN "cost_change_limit_pct" DROP DEFAULT;

-- AlterTable
ALTER TABLE "formula_version" ADD COLUMN     "discarded_at" TIMESTAMPTZ(3);

-- CreateTable
CREATE TABLE "evidence" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "frozen_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "evidence_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "decision" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "trial_id" UUID NOT NULL,
    "outcome" "decision_outcome" NOT NULL,
    "arm_id" UUID,
    "version_id" UUID,
    "evidence_id" UUID NOT NULL,
    "reason" TEXT NOT NULL,
    "decided_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "taken_back_at" TIMESTAMPTZ(3),
    "taken_back_by_id" UUID,
    "taken_back_why" TEXT,
    "revision" INTEGER NOT NULL,

    CONSTRAINT "decision_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateIndex
CREATE INDEX "evidence_bakery_id_frozen_by_id_idx" ON "evidence"("bakery_id", "frozen_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "evidence_bakery_id_trial_id_id_key" ON "evidence"("bakery_id", "trial_id", "id");

-- CreateIndex
CREATE INDEX "decision_bakery_id_trial_id_arm_id_idx" ON "decision"("bakery_id", "trial_id", "arm_id");

-- CreateIndex
CREATE INDEX "decision_bakery_id_decided_by_id_idx" ON "decision"("bakery_id", "decided_by_id");

-- CreateIndex
CREATE INDEX "decision_bakery_id_taken_back_by_id_idx" ON "decision"("bakery_id", "taken_back_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "decision_bakery_id_number_key" ON "decision"("bakery_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "decision_bakery_id_version_id_key" ON "decision"("bakery_id", "version_id");

-- CreateIndex
CREATE UNIQUE INDEX "decision_bakery_id_trial_id_evidence_id_key" ON "decision"("bakery_id", "trial_id", "evidence_id");

-- AddForeignKey
ALTER TABLE "evidence" ADD CONSTRAINT "evidence_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "evidence" ADD CONSTRAINT "evidence_bakery_id_frozen_by_id_fkey" FOREIGN KEY ("bakery_id", "frozen_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_bakery_id_trial_id_arm_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "arm_id") REFERENCES "arm"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_bakery_id_version_id_fkey" FOREIGN KEY ("bakery_id", "version_id") REFERENCES "formula_version"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_bakery_id_trial_id_evidence_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "evidence_id") REFERENCES "evidence"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_bakery_id_decided_by_id_fkey" FOREIGN KEY ("bakery_id", "decided_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "decision" ADD CONSTRAINT "decision_bakery_id_taken_back_by_id_fkey" FOREIGN KEY ("bakery_id", "taken_back_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- From here on by hand: what the schema file cannot say.

ALTER TABLE "bakery"
    ADD CONSTRAINT "bakery_cost_change_limit_range" CHECK ("cost_change_limit_pct" BETWEEN 0 AND 100);

ALTER TABLE "formula_version"
    ADD CONSTRAINT "formula_version_discarded_unsigned" CHECK ("discarded_at" IS NULL OR "signed_at" IS NULL);

ALTER TABLE "evidence"
    ADD CONSTRAINT "evidence_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$'),
    ADD CONSTRAINT "evidence_text_length" CHECK (char_length("text") BETWEEN 2 AND 4000000);

ALTER TABLE "decision"
    ADD CONSTRAINT "decision_number_range" CHECK ("number" >= 1),
    ADD CONSTRAINT "decision_outcome_whole" CHECK (("outcome" = 'change') = ("arm_id" IS NOT NULL) AND ("outcome" = 'change') = ("version_id" IS NOT NULL)),
    ADD CONSTRAINT "decision_taken_back_whole" CHECK (("taken_back_at" IS NULL) = ("taken_back_by_id" IS NULL) AND ("taken_back_at" IS NULL) = ("taken_back_why" IS NULL)),
    ADD CONSTRAINT "decision_reason_length" CHECK (char_length(btrim("reason")) BETWEEN 1 AND 1000 AND char_length(btrim("taken_back_why")) BETWEEN 1 AND 1000),
    ADD CONSTRAINT "decision_revision_range" CHECK ("revision" >= 1);

-- Of all decisions on a trial one stands.
CREATE UNIQUE INDEX "decision_standing_once" ON "decision" ("bakery_id", "trial_id") WHERE "taken_back_at" IS NULL;

CREATE TRIGGER "evidence_only_grows" BEFORE UPDATE OR DELETE ON "evidence" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "evidence_never_emptied" BEFORE TRUNCATE ON "evidence" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- A decision is taken back once, and nothing else of it ever changes. It goes only on an ended trial, and a taking back
-- never reaches a version that is signed.
CREATE FUNCTION "refuse_change_of_decision"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    state_now trial_state;
BEGIN
    IF TG_OP = 'INSERT' THEN
        SELECT t.state INTO state_now FROM trial t WHERE t.bakery_id = NEW.bakery_id AND t.id = NEW.trial_id FOR SHARE;
        IF state_now NOT IN ('closed', 'stopped') THEN
            RAISE EXCEPTION 'the trial is not ended' USING ERRCODE = 'EV004';
        END IF;
        RETURN NEW;
    END IF;
    IF TG_OP = 'DELETE' OR OLD.taken_back_at IS NOT NULL OR (
        NEW.bakery_id, NEW.id, NEW.number, NEW.trial_id, NEW.outcome, NEW.arm_id, NEW.version_id, NEW.evidence_id, NEW.reason, NEW.decided_by_id, NEW.at
    ) IS DISTINCT FROM (
        OLD.bakery_id, OLD.id, OLD.number, OLD.trial_id, OLD.outcome, OLD.arm_id, OLD.version_id, OLD.evidence_id, OLD.reason, OLD.decided_by_id, OLD.at
    ) THEN
        RAISE EXCEPTION 'the decision stands' USING ERRCODE = 'EV004';
    END IF;
    IF NEW.taken_back_at IS NOT NULL AND "formula_version_is_signed"(NEW.bakery_id, NEW.version_id) THEN
        RAISE EXCEPTION 'the formula version is signed' USING ERRCODE = 'EV002';
    END IF;
    RETURN NEW;
END
$$;

CREATE TRIGGER "decision_stands" BEFORE INSERT OR UPDATE OR DELETE ON "decision" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_decision"();
CREATE TRIGGER "decision_never_emptied" BEFORE TRUNCATE ON "decision" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- What was dropped stays dropped, as it was.
CREATE FUNCTION "refuse_change_of_discarded"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF OLD.discarded_at IS NOT NULL THEN
        RAISE EXCEPTION 'the draft is discarded' USING ERRCODE = 'EV004';
    END IF;
    RETURN NEW;
END
$$;

CREATE TRIGGER "formula_version_discarded" BEFORE UPDATE ON "formula_version" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_discarded"();
