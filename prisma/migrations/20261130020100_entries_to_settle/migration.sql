-- Entries from outside that could not go where they belong: kept whole until somebody settles them.
-- CreateEnum
CREATE TYPE "aside_why" AS ENUM ('place_taken', 'corrected_meanwhile', 'id_taken', 'reading_aside');

-- CreateTable
CREATE TABLE "entry_to_settle" (
    "bakery_id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "why" "aside_why" NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "sent_by_id" UUID NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "entry_to_settle_pkey" PRIMARY KEY ("bakery_id","entry_id","hash"),
    CONSTRAINT "entry_to_settle_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$'),
    CONSTRAINT "entry_to_settle_text_given" CHECK ("text" <> '' AND "kind" <> '')
);

-- CreateTable
CREATE TABLE "settled_entry" (
    "bakery_id" UUID NOT NULL,
    "entry_id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "reading_id" UUID,
    "reason" TEXT NOT NULL,
    "settled_by_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "settled_entry_pkey" PRIMARY KEY ("bakery_id","entry_id","hash"),
    CONSTRAINT "settled_entry_reason_given" CHECK ("reason" <> '')
);

-- CreateIndex
CREATE INDEX "entry_to_settle_bakery_id_trial_id_batch_id_idx" ON "entry_to_settle"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "entry_to_settle_bakery_id_sent_by_id_idx" ON "entry_to_settle"("bakery_id", "sent_by_id");

-- CreateIndex
CREATE INDEX "settled_entry_bakery_id_reading_id_idx" ON "settled_entry"("bakery_id", "reading_id");

-- CreateIndex
CREATE INDEX "settled_entry_bakery_id_settled_by_id_idx" ON "settled_entry"("bakery_id", "settled_by_id");

-- AddForeignKey
ALTER TABLE "entry_to_settle" ADD CONSTRAINT "entry_to_settle_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "entry_to_settle" ADD CONSTRAINT "entry_to_settle_bakery_id_sent_by_id_fkey" FOREIGN KEY ("bakery_id", "sent_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "settled_entry" ADD CONSTRAINT "settled_entry_bakery_id_entry_id_hash_fkey" FOREIGN KEY ("bakery_id", "entry_id", "hash") REFERENCES "entry_to_settle"("bakery_id", "entry_id", "hash") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "settled_entry" ADD CONSTRAINT "settled_entry_bakery_id_reading_id_fkey" FOREIGN KEY ("bakery_id", "reading_id") REFERENCES "reading"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "settled_entry" ADD CONSTRAINT "settled_entry_bakery_id_settled_by_id_fkey" FOREIGN KEY ("bakery_id", "settled_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "entry_to_settle_only_grows" BEFORE UPDATE OR DELETE ON "entry_to_settle" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "entry_to_settle_never_emptied" BEFORE TRUNCATE ON "entry_to_settle" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "settled_entry_only_grows" BEFORE UPDATE OR DELETE ON "settled_entry" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "settled_entry_never_emptied" BEFORE TRUNCATE ON "settled_entry" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
