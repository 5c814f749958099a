-- CreateEnum
CREATE TYPE "caller_kind" AS ENUM ('desk', 'station', 'taster', 'job');

-- CreateEnum
CREATE TYPE "language" AS ENUM ('en');

-- AlterTable
ALTER TABLE "audit_entry" ADD COLUMN     "by" "caller_kind";

-- AlterTable
ALTER TABLE "bakery" ADD COLUMN     "language" "language";

-- AlterTable
ALTER TABLE "person" ADD COLUMN     "language" "language";

-- Until now whoever was let in sat at the desk. The texts of these entries, and so their hashes, stay as they are.
ALTER TABLE "audit_entry" DISABLE TRIGGER "audit_entry_only_grows";
UPDATE "audit_entry" SET "by" = 'desk' WHERE "person_id" IS NOT NULL;
ALTER TABLE "audit_entry" ENABLE TRIGGER "audit_entry_only_grows";

-- A person at the desk, perhaps one at a station, and none behind a taster, a job or somebody who was not let in.
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_by_whom" CHECK (
    CASE "by" WHEN 'desk' THEN "person_id" IS NOT NULL WHEN 'station' THEN true ELSE "person_id" IS NULL END
);
