-- Shared tablets: drawn up at the desk, enrolled once by a code, withdrawn for good; PINs, and who gave one where.
ALTER TYPE "pointer_kind" ADD VALUE 'station_code';
ALTER TYPE "pointer_kind" ADD VALUE 'station';
ALTER TYPE "pointer_kind" ADD VALUE 'station_shift';

-- CreateTable
CREATE TABLE "station" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "made_by_id" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,
    "code_ends_at" TIMESTAMPTZ(3) NOT NULL,
    "enrolled_at" TIMESTAMPTZ(3),
    "last_seen_at" TIMESTAMPTZ(3),
    "withdrawn_at" TIMESTAMPTZ(3),
    "withdrawn_by_id" UUID,
    "owner_told_at" TIMESTAMPTZ(3),

    CONSTRAINT "station_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "pin" (
    "bakery_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "set_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "pin_pkey" PRIMARY KEY ("bakery_id","person_id")
);

-- CreateTable
CREATE TABLE "station_shift" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "station_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "began_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "station_shift_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateIndex
CREATE INDEX "station_bakery_id_made_by_id_idx" ON "station"("bakery_id", "made_by_id");

-- CreateIndex
CREATE INDEX "station_bakery_id_withdrawn_by_id_idx" ON "station"("bakery_id", "withdrawn_by_id");

-- CreateIndex
CREATE INDEX "station_shift_bakery_id_station_id_began_at_idx" ON "station_shift"("bakery_id", "station_id", "began_at");

-- CreateIndex
CREATE INDEX "station_shift_bakery_id_person_id_began_at_idx" ON "station_shift"("bakery_id", "person_id", "began_at");

-- AddForeignKey
ALTER TABLE "station" ADD CONSTRAINT "station_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "station" ADD CONSTRAINT "station_bakery_id_made_by_id_fkey" FOREIGN KEY ("bakery_id", "made_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "station" ADD CONSTRAINT "station_bakery_id_withdrawn_by_id_fkey" FOREIGN KEY ("bakery_id", "withdrawn_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "pin" ADD CONSTRAINT "pin_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "pin" ADD CONSTRAINT "pin_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "station_shift" ADD CONSTRAINT "station_shift_bakery_id_station_id_fkey" FOREIGN KEY ("bakery_id", "station_id") REFERENCES "station"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "station_shift" ADD CONSTRAINT "station_shift_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "station"
    ADD CONSTRAINT "station_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 40),
    ADD CONSTRAINT "station_code_ends_later" CHECK ("code_ends_at" > "made_at"),
    ADD CONSTRAINT "station_enrolled_in_time" CHECK ("enrolled_at" IS NULL OR "enrolled_at" < "code_ends_at"),
    ADD CONSTRAINT "station_withdrawn_by_somebody" CHECK (("withdrawn_at" IS NULL) = ("withdrawn_by_id" IS NULL));
CREATE UNIQUE INDEX "station_name_once" ON "station" ("bakery_id", lower("name")) WHERE "withdrawn_at" IS NULL;

ALTER TABLE "pin" ADD CONSTRAINT "pin_hash_form" CHECK ("hash" LIKE '$argon2id$%');

ALTER TABLE "station_shift"
    ADD CONSTRAINT "station_shift_ends_later" CHECK ("ends_at" > "began_at" AND "last_seen_at" >= "began_at");

-- A tablet that was withdrawn does not come back, and a code is good for one.
CREATE FUNCTION "refuse_station_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'a station is enrolled once and withdrawn for good' USING ERRCODE = 'EV004';
END
$$;
CREATE TRIGGER "station_withdrawn_for_good" BEFORE UPDATE ON "station" FOR EACH ROW
    WHEN (OLD.withdrawn_at IS NOT NULL AND (NEW.withdrawn_at IS DISTINCT FROM OLD.withdrawn_at OR NEW.enrolled_at IS DISTINCT FROM OLD.enrolled_at))
    EXECUTE FUNCTION "refuse_station_change"();
CREATE TRIGGER "station_enrolled_once" BEFORE UPDATE ON "station" FOR EACH ROW
    WHEN (OLD.enrolled_at IS NOT NULL AND NEW.enrolled_at IS DISTINCT FROM OLD.enrolled_at)
    EXECUTE FUNCTION "refuse_station_change"();
