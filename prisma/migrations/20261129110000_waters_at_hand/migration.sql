-- AlterEnum
ALTER TYPE "equipment_kind" ADD VALUE 'hot_water';
ALTER TYPE "equipment_kind" ADD VALUE 'chilled_water';
ALTER TYPE "equipment_kind" ADD VALUE 'ice';

-- AlterTable
ALTER TABLE "equipment" ADD COLUMN "temp_c" DOUBLE PRECISION,
    ADD COLUMN "limit_c" DOUBLE PRECISION;

-- ---- Added by hand ----

-- What a plan makes mixing water of. A new value of an enum cannot be used in the transaction that adds it, so kinds
-- are compared as text here; a check that comes to null would let a row pass, so nothing may be missing.
ALTER TABLE "equipment"
    ADD CONSTRAINT "equipment_hot_water_whole" CHECK ("kind"::text <> 'hot_water' OR ("temp_c" IS NOT NULL AND "limit_c" IS NOT NULL AND "temp_c" BETWEEN 20 AND 95 AND "limit_c" BETWEEN 20 AND 95)),
    ADD CONSTRAINT "equipment_chilled_water_whole" CHECK ("kind"::text <> 'chilled_water' OR ("temp_c" IS NOT NULL AND "temp_c" BETWEEN 0 AND 20)),
    ADD CONSTRAINT "equipment_ice_whole" CHECK ("kind"::text <> 'ice' OR ("temp_c" IS NOT NULL AND "temp_c" BETWEEN -40 AND 0));
