-- How many pieces of a dough were counted and what became of them. Counts only grow; the latest stands.
-- CreateTable
CREATE TABLE "piece_count" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "made" INTEGER NOT NULL,
    "good" INTEGER NOT NULL,
    "sampled" INTEGER,
    "sold" INTEGER,
    "given" INTEGER,
    "wasted" INTEGER,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "clock_ahead_s" INTEGER,
    "person_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "content_hash" TEXT NOT NULL,

    CONSTRAINT "piece_count_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "piece_count_range" CHECK ("made" BETWEEN 0 AND 10000 AND "good" BETWEEN 0 AND "made"),
    CONSTRAINT "piece_count_once_each" CHECK ("sampled" >= 0 AND "sold" >= 0 AND "given" >= 0 AND "wasted" >= 0),
    CONSTRAINT "piece_count_adds_up" CHECK (COALESCE("sampled", 0) + COALESCE("sold", 0) + COALESCE("given", 0) + COALESCE("wasted", 0) <= "made"),
    CONSTRAINT "piece_count_not_ahead" CHECK ("at" <= "received_at")
);

-- CreateIndex
CREATE INDEX "piece_count_bakery_id_trial_id_batch_id_idx" ON "piece_count"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "piece_count_bakery_id_batch_id_at_idx" ON "piece_count"("bakery_id", "batch_id", "at");

-- CreateIndex
CREATE INDEX "piece_count_bakery_id_person_id_idx" ON "piece_count"("bakery_id", "person_id");

-- AddForeignKey
ALTER TABLE "piece_count" ADD CONSTRAINT "piece_count_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "piece_count" ADD CONSTRAINT "piece_count_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "piece_count_only_grows" BEFORE UPDATE OR DELETE ON "piece_count" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "piece_count_never_emptied" BEFORE TRUNCATE ON "piece_count" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
