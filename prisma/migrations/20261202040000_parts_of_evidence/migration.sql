-- Evidence of format 2 is a list of parts by their hashes; here are the texts of the parts.
-- CreateTable
CREATE TABLE "evidence_part" (
    "bakery_id" UUID NOT NULL,
    "evidence_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "version" INTEGER NOT NULL,
    "hash" TEXT NOT NULL,
    "text" TEXT NOT NULL,

    CONSTRAINT "evidence_part_pkey" PRIMARY KEY ("bakery_id","evidence_id","kind")
);

-- AddForeignKey
ALTER TABLE "evidence_part" ADD CONSTRAINT "evidence_part_bakery_id_evidence_id_fkey" FOREIGN KEY ("bakery_id", "evidence_id") REFERENCES "evidence"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "evidence_part"
    ADD CONSTRAINT "evidence_part_kind_form" CHECK ("kind" ~ '^[a-z][a-z-]{1,39}$'),
    ADD CONSTRAINT "evidence_part_version_from_one" CHECK ("version" >= 1),
    ADD CONSTRAINT "evidence_part_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$'),
    ADD CONSTRAINT "evidence_part_text_length" CHECK (char_length("text") BETWEEN 2 AND 40000000);

CREATE TRIGGER "evidence_part_only_grows" BEFORE UPDATE OR DELETE ON "evidence_part" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "evidence_part_never_emptied" BEFORE TRUNCATE ON "evidence_part" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
