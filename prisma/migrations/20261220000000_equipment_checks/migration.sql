-- What scales and thermometers showed when they were checked. Checks only grow; a later one stands beside an earlier one.
-- AlterTable
ALTER TABLE "equipment" ADD COLUMN     "off_most_c" DOUBLE PRECISION,
ADD COLUMN     "off_most_g" DOUBLE PRECISION,
ADD COLUMN     "test_mass_g" DOUBLE PRECISION;

-- CreateTable
CREATE TABLE "equipment_check" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "equipment_id" UUID NOT NULL,
    "mass_g" DOUBLE PRECISION,
    "shown_g" DOUBLE PRECISION,
    "off_most_g" DOUBLE PRECISION,
    "shown_c" DOUBLE PRECISION,
    "off_most_c" DOUBLE PRECISION,
    "is_good" BOOLEAN NOT NULL,
    "shown_entered" TEXT NOT NULL,
    "unit_entered" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "clock_ahead_s" INTEGER,
    "person_id" UUID NOT NULL,
    "taken_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL,
    "content_hash" TEXT NOT NULL,

    CONSTRAINT "equipment_check_pkey" PRIMARY KEY ("bakery_id","id"),
    CONSTRAINT "equipment_check_of_its_kind" CHECK (
        (num_nulls("mass_g", "shown_g", "off_most_g") = 0 AND num_nonnulls("shown_c", "off_most_c") = 0)
        OR (num_nulls("shown_c", "off_most_c") = 0 AND num_nonnulls("mass_g", "shown_g", "off_most_g") = 0)),
    CONSTRAINT "equipment_check_within" CHECK ("mass_g" > 0 AND "off_most_g" >= 0 AND "off_most_c" >= 0),
    CONSTRAINT "equipment_check_not_ahead" CHECK ("at" <= "received_at")
);

-- CreateIndex
CREATE INDEX "equipment_check_bakery_id_equipment_id_at_idx" ON "equipment_check"("bakery_id", "equipment_id", "at");

-- CreateIndex
CREATE INDEX "equipment_check_bakery_id_at_id_idx" ON "equipment_check"("bakery_id", "at", "id");

-- CreateIndex
CREATE INDEX "equipment_check_bakery_id_person_id_idx" ON "equipment_check"("bakery_id", "person_id");

-- AddForeignKey
ALTER TABLE "equipment_check" ADD CONSTRAINT "equipment_check_bakery_id_equipment_id_fkey" FOREIGN KEY ("bakery_id", "equipment_id") REFERENCES "equipment"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "equipment_check" ADD CONSTRAINT "equipment_check_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "equipment"
    ADD CONSTRAINT "equipment_check_of_scale" CHECK (num_nonnulls("test_mass_g", "off_most_g") = 0 OR ("kind" = 'scale' AND COALESCE("test_mass_g", 1) > 0 AND COALESCE("off_most_g", 0) >= 0)),
    ADD CONSTRAINT "equipment_check_of_thermometer" CHECK ("off_most_c" IS NULL OR ("kind" = 'thermometer' AND "off_most_c" >= 0));

CREATE TRIGGER "equipment_check_only_grows" BEFORE UPDATE OR DELETE ON "equipment_check" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "equipment_check_never_emptied" BEFORE TRUNCATE ON "equipment_check" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
