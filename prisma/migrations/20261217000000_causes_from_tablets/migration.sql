-- What happened to a dough, noted at a tablet: sent again it is found by the hash of what was said. From the desk it has none.
ALTER TABLE "batch_cause" ADD COLUMN "content_hash" TEXT;
