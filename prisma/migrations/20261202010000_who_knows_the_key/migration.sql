-- Who knows which dough a code stands for, since when; and who looked at key, result and evidence of a trial on which day.
-- CreateEnum
CREATE TYPE "looked_at" AS ENUM ('key', 'result', 'evidence');

-- CreateTable
CREATE TABLE "opened_key" (
    "bakery_id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "plan_hash" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "opened_key_pkey" PRIMARY KEY ("bakery_id","trial_id","plan_hash","person_id"),
    CONSTRAINT "opened_key_plan_hash_form" CHECK ("plan_hash" ~ '^[0-9a-f]{64}$')
);

-- CreateTable
CREATE TABLE "opened_dough_key" (
    "bakery_id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "opened_dough_key_pkey" PRIMARY KEY ("bakery_id","batch_id","person_id")
);

-- CreateTable
CREATE TABLE "look" (
    "bakery_id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "what" "looked_at" NOT NULL,
    "day" DATE NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "look_pkey" PRIMARY KEY ("bakery_id","trial_id","person_id","what","day")
);

-- CreateIndex
CREATE INDEX "opened_key_bakery_id_person_id_idx" ON "opened_key"("bakery_id", "person_id");

-- CreateIndex
CREATE INDEX "opened_dough_key_bakery_id_trial_id_batch_id_idx" ON "opened_dough_key"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "opened_dough_key_bakery_id_person_id_idx" ON "opened_dough_key"("bakery_id", "person_id");

-- CreateIndex
CREATE INDEX "look_bakery_id_person_id_idx" ON "look"("bakery_id", "person_id");

-- AddForeignKey
ALTER TABLE "opened_key" ADD CONSTRAINT "opened_key_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "opened_key" ADD CONSTRAINT "opened_key_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "opened_dough_key" ADD CONSTRAINT "opened_dough_key_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "opened_dough_key" ADD CONSTRAINT "opened_dough_key_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "look" ADD CONSTRAINT "look_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "look" ADD CONSTRAINT "look_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "opened_key_only_grows" BEFORE UPDATE OR DELETE ON "opened_key" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "opened_key_never_emptied" BEFORE TRUNCATE ON "opened_key" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "opened_dough_key_only_grows" BEFORE UPDATE OR DELETE ON "opened_dough_key" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "opened_dough_key_never_emptied" BEFORE TRUNCATE ON "opened_dough_key" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "look_only_grows" BEFORE UPDATE OR DELETE ON "look" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "look_never_emptied" BEFORE TRUNCATE ON "look" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
