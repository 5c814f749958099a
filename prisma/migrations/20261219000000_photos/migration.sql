-- Photos of a dough, written anew and kept in pieces. They only grow. What is still on its way lies apart, and goes.
-- CreateTable
CREATE TABLE "photo" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "piece" INTEGER,
    "person_id" UUID NOT NULL,
    "station_id" UUID,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "sent_bytes" INTEGER NOT NULL,
    "sent_hash" TEXT NOT NULL,
    "media_type" TEXT NOT NULL,
    "bytes" INTEGER NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,
    "small" BYTEA NOT NULL,

    CONSTRAINT "photo_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "photo_within" CHECK ("sent_bytes" BETWEEN 1 AND 8388608 AND "bytes" BETWEEN 1 AND 16777216 AND "width" > 0 AND "height" > 0 AND "width"::bigint * "height" <= 50000000),
    CONSTRAINT "photo_written_anew" CHECK ("media_type" = 'image/jpeg'),
    CONSTRAINT "photo_hashes" CHECK ("sent_hash" ~ '^[0-9a-f]{64}$' AND "hash" ~ '^[0-9a-f]{64}$'),
    CONSTRAINT "photo_of_a_piece" CHECK ("piece" >= 1)
);

-- CreateTable
CREATE TABLE "photo_piece" (
    "bakery_id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "bytes" BYTEA NOT NULL,

    CONSTRAINT "photo_piece_pkey" PRIMARY KEY ("bakery_id","photo_id","number"),
    CONSTRAINT "photo_piece_within" CHECK ("number" BETWEEN 0 AND 63 AND octet_length("bytes") BETWEEN 1 AND 262144)
);

-- CreateTable
CREATE TABLE "coming_photo" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "piece" INTEGER,
    "person_id" UUID NOT NULL,
    "station_id" UUID,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "begun_at" TIMESTAMPTZ(3) NOT NULL,
    "sent_bytes" INTEGER NOT NULL,
    "sent_hash" TEXT NOT NULL,

    CONSTRAINT "coming_photo_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "coming_photo_within" CHECK ("sent_bytes" BETWEEN 1 AND 8388608)
);

-- CreateTable
CREATE TABLE "coming_photo_piece" (
    "bakery_id" UUID NOT NULL,
    "photo_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "bytes" BYTEA NOT NULL,

    CONSTRAINT "coming_photo_piece_pkey" PRIMARY KEY ("bakery_id","photo_id","number"),
    CONSTRAINT "coming_photo_piece_within" CHECK ("number" BETWEEN 0 AND 31 AND octet_length("bytes") BETWEEN 1 AND 262144)
);

-- CreateIndex
CREATE INDEX "photo_bakery_id_trial_id_batch_id_idx" ON "photo"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "photo_bakery_id_batch_id_received_at_idx" ON "photo"("bakery_id", "batch_id", "received_at");

-- CreateIndex
CREATE INDEX "photo_bakery_id_person_id_received_at_idx" ON "photo"("bakery_id", "person_id", "received_at");

-- CreateIndex
CREATE INDEX "photo_bakery_id_station_id_received_at_idx" ON "photo"("bakery_id", "station_id", "received_at");

-- CreateIndex
CREATE INDEX "coming_photo_bakery_id_trial_id_batch_id_idx" ON "coming_photo"("bakery_id", "trial_id", "batch_id");

-- CreateIndex
CREATE INDEX "coming_photo_bakery_id_person_id_idx" ON "coming_photo"("bakery_id", "person_id");

-- CreateIndex
CREATE INDEX "coming_photo_bakery_id_station_id_idx" ON "coming_photo"("bakery_id", "station_id");

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "photo" ADD CONSTRAINT "photo_bakery_id_station_id_fkey" FOREIGN KEY ("bakery_id", "station_id") REFERENCES "station"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "photo_piece" ADD CONSTRAINT "photo_piece_bakery_id_photo_id_fkey" FOREIGN KEY ("bakery_id", "photo_id") REFERENCES "photo"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "coming_photo" ADD CONSTRAINT "coming_photo_bakery_id_trial_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "trial_id", "batch_id") REFERENCES "batch"("bakery_id", "trial_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "coming_photo" ADD CONSTRAINT "coming_photo_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "coming_photo" ADD CONSTRAINT "coming_photo_bakery_id_station_id_fkey" FOREIGN KEY ("bakery_id", "station_id") REFERENCES "station"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "coming_photo_piece" ADD CONSTRAINT "coming_photo_piece_bakery_id_photo_id_fkey" FOREIGN KEY ("bakery_id", "photo_id") REFERENCES "coming_photo"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- What is written anew is compressed already.
ALTER TABLE "photo_piece" ALTER COLUMN "bytes" SET STORAGE EXTERNAL;
ALTER TABLE "coming_photo_piece" ALTER COLUMN "bytes" SET STORAGE EXTERNAL;

CREATE TRIGGER "photo_only_grows" BEFORE UPDATE OR DELETE ON "photo" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "photo_never_emptied" BEFORE TRUNCATE ON "photo" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "photo_piece_only_grows" BEFORE UPDATE OR DELETE ON "photo_piece" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "photo_piece_never_emptied" BEFORE TRUNCATE ON "photo_piece" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
