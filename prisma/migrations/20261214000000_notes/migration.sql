-- Notes at any point, and who has read them. They only grow, and move nothing.
-- CreateTable
CREATE TABLE "note" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID,
    "batch_id" UUID,
    "text" TEXT NOT NULL,
    "for_next" BOOLEAN NOT NULL,
    "person_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "content_hash" TEXT NOT NULL,

    CONSTRAINT "note_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "note_reader" (
    "bakery_id" UUID NOT NULL,
    "note_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "note_reader_pkey" PRIMARY KEY ("bakery_id","note_id","person_id")
);

-- CreateIndex
CREATE INDEX "note_bakery_id_received_at_idx" ON "note"("bakery_id", "received_at");

-- CreateIndex
CREATE INDEX "note_bakery_id_trial_id_batch_id_idx" ON "note"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "note_bakery_id_batch_id_received_at_idx" ON "note"("bakery_id", "batch_id", "received_at");

-- CreateIndex
CREATE INDEX "note_bakery_id_person_id_idx" ON "note"("bakery_id", "person_id");

-- CreateIndex
CREATE INDEX "note_reader_bakery_id_person_id_idx" ON "note_reader"("bakery_id", "person_id");

-- AddForeignKey
ALTER TABLE "note" ADD CONSTRAINT "note_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "note" ADD CONSTRAINT "note_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "note" ADD CONSTRAINT "note_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "note_reader" ADD CONSTRAINT "note_reader_bakery_id_note_id_fkey" FOREIGN KEY ("bakery_id", "note_id") REFERENCES "note"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "note_reader" ADD CONSTRAINT "note_reader_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "note"
    ADD CONSTRAINT "note_text_length" CHECK (char_length(btrim("text")) BETWEEN 1 AND 2000),
    ADD CONSTRAINT "note_of_dough_of_trial" CHECK ("batch_id" IS NULL OR "trial_id" IS NOT NULL);

CREATE TRIGGER "note_only_grows" BEFORE UPDATE OR DELETE ON "note" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "note_never_emptied" BEFORE TRUNCATE ON "note" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "note_reader_only_grows" BEFORE UPDATE OR DELETE ON "note_reader" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "note_reader_never_emptied" BEFORE TRUNCATE ON "note_reader" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
