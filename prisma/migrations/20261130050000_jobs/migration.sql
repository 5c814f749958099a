-- What the install does by itself: when each of its jobs last ran, and whether the record of each bakery fitted together.
-- CreateEnum
CREATE TYPE "job_outcome" AS ENUM ('done', 'failed');

-- CreateEnum
CREATE TYPE "record_fault" AS ENUM ('gap', 'order', 'altered', 'head', 'unknown_format');

-- CreateTable
CREATE TABLE "job_run" (
    "name" TEXT NOT NULL,
    "began_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "outcome" "job_outcome",

    CONSTRAINT "job_run_pkey" PRIMARY KEY ("name"),
    CONSTRAINT "job_run_ended_somehow" CHECK (("ended_at" IS NULL) = ("outcome" IS NULL))
);

-- CreateTable
CREATE TABLE "record_check" (
    "bakery_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "entries" BIGINT NOT NULL,
    "fault_number" BIGINT,
    "fault" "record_fault",

    CONSTRAINT "record_check_pkey" PRIMARY KEY ("bakery_id"),
    CONSTRAINT "record_check_fault_somewhere" CHECK (("fault_number" IS NULL) = ("fault" IS NULL)),
    CONSTRAINT "record_check_entries_counted" CHECK ("entries" >= 0)
);

-- AddForeignKey
ALTER TABLE "record_check" ADD CONSTRAINT "record_check_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;
