-- AlterTable
-- The last move of a batch, as long as it can be undone: where it came from, when, by whom, and the revision it made.
ALTER TABLE "batch" ADD COLUMN     "moved_at" TIMESTAMPTZ(3),
ADD COLUMN     "moved_by_id" UUID,
ADD COLUMN     "moved_from" "batch_state",
ADD COLUMN     "moved_revision" INTEGER;

-- CreateIndex
CREATE INDEX "batch_bakery_id_moved_by_id_idx" ON "batch"("bakery_id", "moved_by_id");

-- AddForeignKey
ALTER TABLE "batch" ADD CONSTRAINT "batch_bakery_id_moved_by_id_fkey" FOREIGN KEY ("bakery_id", "moved_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "batch"
    ADD CONSTRAINT "batch_move_whole" CHECK (num_nulls("moved_from", "moved_at", "moved_by_id", "moved_revision") IN (0, 4));
