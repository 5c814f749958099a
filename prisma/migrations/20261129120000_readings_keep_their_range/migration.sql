-- AlterTable
-- The plausible range that a reading was judged by. Readings from before have none; the measure's own stands for it.
ALTER TABLE "reading" ADD COLUMN     "plausible_least" DOUBLE PRECISION,
ADD COLUMN     "plausible_most" DOUBLE PRECISION;

ALTER TABLE "reading"
    ADD CONSTRAINT "reading_range_whole" CHECK (("plausible_least" IS NULL) = ("plausible_most" IS NULL) AND "plausible_least" <= "plausible_most");
