-- Which reading holds at a place. Readings only grow and a correction may move one to another piece, so the place can be
-- no key of theirs; it is one here, where a correction takes the row of what it corrects away.
-- CreateTable
CREATE TABLE "reading_place" (
    "bakery_id" UUID NOT NULL,
    "reading_id" UUID NOT NULL,
    "batch_id" UUID NOT NULL,
    "measure_id" UUID NOT NULL,
    "piece" INTEGER,
    "factor_level" TEXT,
    "repeat" INTEGER NOT NULL,

    CONSTRAINT "reading_place_pkey" PRIMARY KEY ("bakery_id","reading_id")
);

-- CreateIndex
CREATE UNIQUE INDEX "reading_place_taken" ON "reading_place"("bakery_id", "batch_id", "measure_id", "piece", "factor_level", "repeat") NULLS NOT DISTINCT;

-- AddForeignKey: to the batch and not to the reading, which is there in any case, since the trigger below is all that
-- writes here; looking each of 15,000 up again took longer than a statement may.
ALTER TABLE "reading_place" ADD CONSTRAINT "reading_place_bakery_id_batch_id_fkey" FOREIGN KEY ("bakery_id", "batch_id") REFERENCES "batch"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- What is there already. Batches are locked while they are read, so no two hold at one place.
INSERT INTO "reading_place" ("bakery_id", "reading_id", "batch_id", "measure_id", "piece", "factor_level", "repeat")
SELECT bakery_id, id, batch_id, measure_id, piece, factor_level, repeat FROM "reading" r
WHERE NOT EXISTS (SELECT 1 FROM "reading" s WHERE s.bakery_id = r.bakery_id AND s.supersedes_id = r.id);

-- However a reading is written, its place goes with it, for all rows of a statement at once. The places that its
-- corrections leave are free before any is taken. A kept plan was made for one row and must do for 15,000: a list that
-- NOT IN looks into is hashed whatever its length, and where nothing is corrected nothing is looked for.
CREATE FUNCTION "reading_takes_place"() RETURNS trigger LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
BEGIN
    IF EXISTS (SELECT 1 FROM added WHERE supersedes_id IS NOT NULL) THEN
        DELETE FROM reading_place WHERE (bakery_id, reading_id) IN (SELECT bakery_id, supersedes_id FROM added WHERE supersedes_id IS NOT NULL);
    END IF;
    INSERT INTO reading_place (bakery_id, reading_id, batch_id, measure_id, piece, factor_level, repeat)
    SELECT bakery_id, id, batch_id, measure_id, piece, factor_level, repeat FROM added
    WHERE (bakery_id, id) NOT IN (SELECT bakery_id, supersedes_id FROM added WHERE supersedes_id IS NOT NULL);
    RETURN NULL;
END
$$;

-- Nobody else writes places, whatever their rights are.
CREATE FUNCTION "refuse_place_by_hand"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF pg_trigger_depth() < 2 THEN
        RAISE EXCEPTION 'a place goes with its reading' USING ERRCODE = 'EV006';
    END IF;
    RETURN NULL;
END
$$;

CREATE TRIGGER "reading_takes_place" AFTER INSERT ON "reading" REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION "reading_takes_place"();
CREATE TRIGGER "reading_place_by_readings_only" BEFORE INSERT OR UPDATE OR DELETE OR TRUNCATE ON "reading_place" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_place_by_hand"();
