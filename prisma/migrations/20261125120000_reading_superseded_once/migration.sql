-- A reading is corrected once; what is wrong with the correction is corrected there, so that a chain never forks.
CREATE UNIQUE INDEX "reading_superseded_once" ON "reading" ("bakery_id", "supersedes_id") WHERE "supersedes_id" IS NOT NULL;
