-- What comes after a trial's readings were closed: another value for what was closed, a reading that was missing, a dough
-- that should not count. It is proposed, a second person says yes or no once, and what was closed stays what it was.
-- CreateEnum
CREATE TYPE "signs_as" AS ENUM ('second_person', 'owner', 'head_baker', 'witness', 'alone');

-- AlterEnum
ALTER TYPE "aside_why" ADD VALUE 'trial_closed';

-- CreateTable
CREATE TABLE "amendment" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "entry_id" UUID,
    "entry_hash" TEXT,
    "proposed_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "amendment_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "amendment_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$'),
    CONSTRAINT "amendment_of_whole_entry" CHECK (("entry_id" IS NULL) = ("entry_hash" IS NULL))
);

-- CreateTable
CREATE TABLE "amendment_verdict" (
    "bakery_id" UUID NOT NULL,
    "amendment_id" UUID NOT NULL,
    "proposed_by_id" UUID NOT NULL,
    "is_accepted" BOOLEAN NOT NULL,
    "signs_as" "signs_as" NOT NULL,
    "note" TEXT NOT NULL,
    "decided_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "amendment_verdict_pkey" PRIMARY KEY ("bakery_id","amendment_id"),
    CONSTRAINT "amendment_verdict_by_a_second" CHECK ("decided_by_id" <> "proposed_by_id" OR "signs_as" = 'alone'),
    CONSTRAINT "amendment_verdict_signs_as" CHECK ("signs_as" IN ('second_person', 'witness', 'alone')),
    CONSTRAINT "amendment_verdict_no_says_why" CHECK ("is_accepted" OR "note" <> '')
);

-- CreateTable
CREATE TABLE "slip_signature" (
    "bakery_id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "amended_hash" TEXT NOT NULL,
    "signs_as" "signs_as" NOT NULL,
    "is_last" BOOLEAN NOT NULL,
    "reason" TEXT NOT NULL,
    "signed_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "slip_signature_pkey" PRIMARY KEY ("bakery_id","trial_id","amended_hash","signed_by_id"),
    CONSTRAINT "slip_signature_hash_form" CHECK ("amended_hash" ~ '^[0-9a-f]{64}$'),
    CONSTRAINT "slip_signature_signs_as" CHECK ("signs_as" IN ('owner', 'head_baker', 'witness', 'alone')),
    CONSTRAINT "slip_signature_reason_given" CHECK ("reason" <> '')
);

-- CreateIndex
CREATE INDEX "amendment_bakery_id_trial_id_batch_id_idx" ON "amendment"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "amendment_bakery_id_proposed_by_id_idx" ON "amendment"("bakery_id", "proposed_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "amendment_bakery_id_id_proposed_by_id_key" ON "amendment"("bakery_id", "id", "proposed_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "amendment_bakery_id_entry_id_entry_hash_key" ON "amendment"("bakery_id", "entry_id", "entry_hash");

-- CreateIndex
CREATE INDEX "amendment_verdict_bakery_id_decided_by_id_idx" ON "amendment_verdict"("bakery_id", "decided_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "amendment_verdict_bakery_id_amendment_id_proposed_by_id_key" ON "amendment_verdict"("bakery_id", "amendment_id", "proposed_by_id");

-- CreateIndex
CREATE INDEX "slip_signature_bakery_id_signed_by_id_idx" ON "slip_signature"("bakery_id", "signed_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "slip_signature_bakery_id_trial_id_amended_hash_signs_as_key" ON "slip_signature"("bakery_id", "trial_id", "amended_hash", "signs_as");

-- AddForeignKey
ALTER TABLE "amendment" ADD CONSTRAINT "amendment_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "closing"("bakery_id", "trial_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "amendment" ADD CONSTRAINT "amendment_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "amendment" ADD CONSTRAINT "amendment_bakery_id_entry_id_entry_hash_fkey" FOREIGN KEY ("bakery_id", "entry_id", "entry_hash") REFERENCES "entry_to_settle"("bakery_id", "entry_id", "hash") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "amendment" ADD CONSTRAINT "amendment_bakery_id_proposed_by_id_fkey" FOREIGN KEY ("bakery_id", "proposed_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "amendment_verdict" ADD CONSTRAINT "amendment_verdict_bakery_id_amendment_id_proposed_by_id_fkey" FOREIGN KEY ("bakery_id", "amendment_id", "proposed_by_id") REFERENCES "amendment"("bakery_id", "id", "proposed_by_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "amendment_verdict" ADD CONSTRAINT "amendment_verdict_bakery_id_decided_by_id_fkey" FOREIGN KEY ("bakery_id", "decided_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "slip_signature" ADD CONSTRAINT "slip_signature_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "closing"("bakery_id", "trial_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "slip_signature" ADD CONSTRAINT "slip_signature_bakery_id_signed_by_id_fkey" FOREIGN KEY ("bakery_id", "signed_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "amendment_only_grows" BEFORE UPDATE OR DELETE ON "amendment" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "amendment_never_emptied" BEFORE TRUNCATE ON "amendment" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "amendment_verdict_only_grows" BEFORE UPDATE OR DELETE ON "amendment_verdict" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "amendment_verdict_never_emptied" BEFORE TRUNCATE ON "amendment_verdict" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "slip_signature_only_grows" BEFORE UPDATE OR DELETE ON "slip_signature" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "slip_signature_never_emptied" BEFORE TRUNCATE ON "slip_signature" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
