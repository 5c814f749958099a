-- What was done with a dough and when. It only grows and moves nothing; whatever two say of one step both stands.
-- CreateEnum
CREATE TYPE "step_kind" AS ENUM ('mixing_begun', 'mixed', 'folded', 'scaled', 'pre_shaped', 'moulded', 'retarding_begun', 'proof_begun', 'scored', 'in_oven', 'out_of_oven', 'cooled');

-- CreateTable
CREATE TABLE "step" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "step" "step_kind" NOT NULL,
    "is_done" BOOLEAN NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "ago_s" INTEGER NOT NULL,
    "clock_ahead_s" INTEGER,
    "setting" TEXT,
    "chamber_temp_c" DOUBLE PRECISION,
    "place" TEXT,
    "set_temp_c" DOUBLE PRECISION,
    "read_temp_c" DOUBLE PRECISION,
    "steam" BOOLEAN,
    "beside" TEXT,
    "person_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "supersedes_id" UUID,
    "reason" TEXT,
    "content_hash" TEXT NOT NULL,

    CONSTRAINT "step_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "step_done_unless_corrected" CHECK ("is_done" OR "supersedes_id" IS NOT NULL),
    CONSTRAINT "step_reason_for_correction" CHECK (("supersedes_id" IS NULL) = ("reason" IS NULL) AND "reason" <> ''),
    CONSTRAINT "step_not_ahead" CHECK ("at" <= "received_at" AND "ago_s" BETWEEN 0 AND 86400),
    CONSTRAINT "step_of_the_mould" CHECK ("setting" IS NULL OR ("step" = 'moulded' AND "is_done" AND char_length("setting") BETWEEN 1 AND 60)),
    CONSTRAINT "step_of_the_chamber" CHECK ("chamber_temp_c" IS NULL OR ("step" IN ('retarding_begun', 'proof_begun') AND "is_done" AND "chamber_temp_c" BETWEEN -40 AND 500)),
    CONSTRAINT "step_of_the_oven" CHECK (num_nonnulls("place", "set_temp_c", "read_temp_c", "steam", "beside") = 0 OR ("step" = 'in_oven' AND "is_done")),
    CONSTRAINT "step_oven_within" CHECK (char_length("place") BETWEEN 1 AND 60 AND char_length("beside") BETWEEN 1 AND 200 AND "set_temp_c" BETWEEN -40 AND 500 AND "read_temp_c" BETWEEN -40 AND 500)
);

-- CreateIndex
CREATE INDEX "step_bakery_id_trial_id_batch_id_idx" ON "step"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "step_bakery_id_person_id_idx" ON "step"("bakery_id", "person_id");

-- CreateIndex
CREATE INDEX "step_supersedes_idx" ON "step"("bakery_id", "batch_id", "step", "supersedes_id");

-- CreateIndex
CREATE UNIQUE INDEX "step_bakery_id_batch_id_step_id_key" ON "step"("bakery_id", "batch_id", "step", "id");

-- AddForeignKey
ALTER TABLE "step" ADD CONSTRAINT "step_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "step" ADD CONSTRAINT "step_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "step" ADD CONSTRAINT "step_bakery_id_batch_id_step_supersedes_id_fkey" FOREIGN KEY ("bakery_id", "batch_id", "step", "supersedes_id") REFERENCES "step"("bakery_id", "batch_id", "step", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "step_only_grows" BEFORE UPDATE OR DELETE ON "step" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "step_never_emptied" BEFORE TRUNCATE ON "step" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
