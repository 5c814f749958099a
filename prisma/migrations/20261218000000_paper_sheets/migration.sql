-- Readings that were written on paper first: who wrote them and when, beside who put them into the book. They only grow.
-- CreateTable
CREATE TABLE "paper_sheet" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "written_by_id" UUID NOT NULL,
    "written_at" TIMESTAMPTZ(3) NOT NULL,
    "keyed_by_id" UUID NOT NULL,
    "keyed_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "paper_sheet_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "sheet_reading" (
    "bakery_id" UUID NOT NULL,
    "reading_id" UUID NOT NULL,
    "sheet_id" UUID NOT NULL,

    CONSTRAINT "sheet_reading_pkey" PRIMARY KEY ("bakery_id","reading_id")
);

-- CreateIndex
CREATE INDEX "paper_sheet_bakery_id_trial_id_batch_id_idx" ON "paper_sheet"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "paper_sheet_bakery_id_written_by_id_idx" ON "paper_sheet"("bakery_id", "written_by_id");

-- CreateIndex
CREATE INDEX "paper_sheet_bakery_id_keyed_by_id_idx" ON "paper_sheet"("bakery_id", "keyed_by_id");

-- CreateIndex
CREATE INDEX "sheet_reading_bakery_id_sheet_id_idx" ON "sheet_reading"("bakery_id", "sheet_id");

-- AddForeignKey
ALTER TABLE "paper_sheet" ADD CONSTRAINT "paper_sheet_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "paper_sheet" ADD CONSTRAINT "paper_sheet_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "paper_sheet" ADD CONSTRAINT "paper_sheet_bakery_id_written_by_id_fkey" FOREIGN KEY ("bakery_id", "written_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "paper_sheet" ADD CONSTRAINT "paper_sheet_bakery_id_keyed_by_id_fkey" FOREIGN KEY ("bakery_id", "keyed_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "sheet_reading" ADD CONSTRAINT "sheet_reading_bakery_id_reading_id_fkey" FOREIGN KEY ("bakery_id", "reading_id") REFERENCES "reading"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "sheet_reading" ADD CONSTRAINT "sheet_reading_bakery_id_sheet_id_fkey" FOREIGN KEY ("bakery_id", "sheet_id") REFERENCES "paper_sheet"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "paper_sheet_only_grows" BEFORE UPDATE OR DELETE ON "paper_sheet" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "paper_sheet_never_emptied" BEFORE TRUNCATE ON "paper_sheet" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "sheet_reading_only_grows" BEFORE UPDATE OR DELETE ON "sheet_reading" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "sheet_reading_never_emptied" BEFORE TRUNCATE ON "sheet_reading" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
