-- What a form that was sent came to, so that the same form sent again gets the same answer and does nothing more.
-- CreateTable
CREATE TABLE "answered_form" (
    "bakery_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "form_id" UUID NOT NULL,
    "asked_hash" TEXT NOT NULL,
    "value" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "answered_form_pkey" PRIMARY KEY ("bakery_id","person_id","form_id","asked_hash"),
    CONSTRAINT "answered_form_hash_form" CHECK ("asked_hash" ~ '^[0-9a-f]{64}$')
);

-- AddForeignKey
ALTER TABLE "answered_form" ADD CONSTRAINT "answered_form_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

CREATE TRIGGER "answered_form_only_grows" BEFORE UPDATE OR DELETE ON "answered_form" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "answered_form_never_emptied" BEFORE TRUNCATE ON "answered_form" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
