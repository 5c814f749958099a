-- CreateEnum
CREATE TYPE "dose_how" AS ENUM ('more', 'in_all', 'in_place');

-- CreateEnum
CREATE TYPE "equal_by" AS ENUM ('mass', 'active', 'water', 'fat', 'sugars', 'protein', 'salt');

-- CreateEnum
CREATE TYPE "counted_part" AS ENUM ('water', 'fat', 'sugars', 'protein');

-- AlterTable
-- Ingredients that are there count as is usual for their kind, as they did before there were marks.
ALTER TABLE "ingredient" ADD COLUMN     "binds_water" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "counts" "counted_part"[] DEFAULT ARRAY[]::"counted_part"[],
ADD COLUMN     "counts_as_usual" BOOLEAN NOT NULL DEFAULT true;

-- AlterTable
-- Doses that are there say how much more than the control.
ALTER TABLE "arm_dose" ADD COLUMN     "equal_by" "equal_by",
ADD COLUMN     "how" "dose_how" NOT NULL DEFAULT 'more',
ADD COLUMN     "instead_of_id" UUID;

-- CreateIndex
CREATE INDEX "arm_dose_bakery_id_instead_of_id_idx" ON "arm_dose"("bakery_id", "instead_of_id");

-- AddForeignKey
ALTER TABLE "arm_dose" ADD CONSTRAINT "arm_dose_bakery_id_instead_of_id_fkey" FOREIGN KEY ("bakery_id", "instead_of_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- Checks that Prisma cannot say.
ALTER TABLE "ingredient"
    ADD CONSTRAINT "ingredient_counts_own" CHECK (NOT "counts_as_usual" OR cardinality("counts") = 0);

ALTER TABLE "arm_dose"
    DROP CONSTRAINT "arm_dose_value_range",
    ADD CONSTRAINT "arm_dose_value_range" CHECK (
        CASE "how" WHEN 'more' THEN "value" <> 0 WHEN 'in_all' THEN "value" >= 0 ELSE "value" > 0 END
    ),
    ADD CONSTRAINT "arm_dose_in_place_whole" CHECK (
        ("how" = 'in_place') = ("instead_of_id" IS NOT NULL) AND ("how" = 'in_place') = ("equal_by" IS NOT NULL)
        AND ("instead_of_id" IS NULL OR ("instead_of_id" <> "ingredient_id" AND "dose_of" = 'product'))
    );
