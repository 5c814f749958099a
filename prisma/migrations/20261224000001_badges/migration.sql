-- A badge: a code on paper that leads its holder on to a tablet as their PIN does. Nobody has one without a PIN.

-- CreateTable
CREATE TABLE "badge" (
    "bakery_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "made_by_id" UUID NOT NULL,
    "made_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "badge_pkey" PRIMARY KEY ("bakery_id","person_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "badge_bakery_id_hash_key" ON "badge"("bakery_id", "hash");

-- CreateIndex
CREATE INDEX "badge_bakery_id_made_by_id_idx" ON "badge"("bakery_id", "made_by_id");

-- AddForeignKey
ALTER TABLE "badge" ADD CONSTRAINT "badge_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "badge" ADD CONSTRAINT "badge_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "pin"("bakery_id", "person_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "badge" ADD CONSTRAINT "badge_bakery_id_made_by_id_fkey" FOREIGN KEY ("bakery_id", "made_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "badge" ADD CONSTRAINT "badge_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$');

-- Whether a shift at a tablet began by a badge: then no PIN was given there.
ALTER TABLE "station_shift" ADD COLUMN "by_badge" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "station_shift" ALTER COLUMN "by_badge" DROP DEFAULT;
