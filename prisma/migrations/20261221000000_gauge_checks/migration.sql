-- A volume gauge is checked with a block of known volume, beside scales and thermometers.
-- AlterTable
ALTER TABLE "equipment" ADD COLUMN     "block_ml" DOUBLE PRECISION,
ADD COLUMN     "off_most_ml" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "equipment_check" ADD COLUMN     "block_ml" DOUBLE PRECISION,
ADD COLUMN     "off_most_ml" DOUBLE PRECISION,
ADD COLUMN     "shown_ml" DOUBLE PRECISION;

ALTER TABLE "equipment"
    ADD CONSTRAINT "equipment_check_of_gauge" CHECK (num_nonnulls("block_ml", "off_most_ml") = 0 OR ("kind" = 'volume_gauge' AND COALESCE("block_ml", "volume_ml") > 0 AND COALESCE("block_ml", "volume_ml") <= "volume_ml" AND COALESCE("off_most_ml", 0) >= 0));

ALTER TABLE "equipment_check"
    DROP CONSTRAINT "equipment_check_of_its_kind",
    DROP CONSTRAINT "equipment_check_within",
    ADD CONSTRAINT "equipment_check_of_its_kind" CHECK (
        (num_nulls("mass_g", "shown_g", "off_most_g") = 0 AND num_nonnulls("shown_c", "off_most_c", "block_ml", "shown_ml", "off_most_ml") = 0)
        OR (num_nulls("shown_c", "off_most_c") = 0 AND num_nonnulls("mass_g", "shown_g", "off_most_g", "block_ml", "shown_ml", "off_most_ml") = 0)
        OR (num_nulls("block_ml", "shown_ml", "off_most_ml") = 0 AND num_nonnulls("mass_g", "shown_g", "off_most_g", "shown_c", "off_most_c") = 0)),
    ADD CONSTRAINT "equipment_check_within" CHECK ("mass_g" > 0 AND "off_most_g" >= 0 AND "off_most_c" >= 0 AND "block_ml" > 0 AND "off_most_ml" >= 0);
