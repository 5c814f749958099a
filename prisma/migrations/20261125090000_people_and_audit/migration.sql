-- CreateEnum
CREATE TYPE "role" AS ENUM ('owner', 'head_baker', 'shift_baker');

-- CreateEnum
CREATE TYPE "pointer_kind" AS ENUM ('email', 'session', 'invitation');

-- CreateEnum
CREATE TYPE "invitation_purpose" AS ENUM ('join', 'reset');

-- CreateEnum
CREATE TYPE "install_kind" AS ENUM ('demo', 'real');

-- CreateEnum
CREATE TYPE "mass_units" AS ENUM ('metric', 'ounces');

-- CreateEnum
CREATE TYPE "temperature_units" AS ENUM ('celsius', 'fahrenheit');

-- CreateTable
CREATE TABLE "install" (
    "id" INTEGER NOT NULL,
    "epoch" UUID NOT NULL,
    "kind" "install_kind" NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "first_run_hash" TEXT,
    "first_run_ends_at" TIMESTAMPTZ(3),
    "first_run_used_at" TIMESTAMPTZ(3),

    CONSTRAINT "install_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "sign_in_pointer" (
    "hash" TEXT NOT NULL,
    "kind" "pointer_kind" NOT NULL,
    "bakery_id" UUID NOT NULL,
    "target_id" UUID NOT NULL,

    CONSTRAINT "sign_in_pointer_pkey" PRIMARY KEY ("hash")
);

-- CreateTable
CREATE TABLE "sign_in_limit" (
    "key_hash" TEXT NOT NULL,
    "failures" INTEGER NOT NULL,
    "last_at" TIMESTAMPTZ(3) NOT NULL,
    "locked_until" TIMESTAMPTZ(3),

    CONSTRAINT "sign_in_limit_pkey" PRIMARY KEY ("key_hash")
);

-- CreateTable
CREATE TABLE "bakery" (
    "bakery_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "locale" TEXT NOT NULL,
    "currency" CHAR(3) NOT NULL,
    "region" TEXT NOT NULL,
    "mass_units" "mass_units" NOT NULL,
    "temperature_units" "temperature_units" NOT NULL,
    "works_alone" BOOLEAN NOT NULL,
    "revision" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "bakery_pkey" PRIMARY KEY ("bakery_id")
);

-- CreateTable
CREATE TABLE "person" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "role" "role" NOT NULL,
    "active_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "revision" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "person_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "password" (
    "bakery_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "hash" TEXT NOT NULL,
    "set_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "password_pkey" PRIMARY KEY ("bakery_id","person_id")
);

-- CreateTable
CREATE TABLE "session" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "opened_at" TIMESTAMPTZ(3) NOT NULL,
    "last_seen_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "device" TEXT NOT NULL,

    CONSTRAINT "session_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "invitation" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "purpose" "invitation_purpose" NOT NULL,
    "person_id" UUID,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "role" "role" NOT NULL,
    "invited_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "ends_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),
    "withdrawn_at" TIMESTAMPTZ(3),

    CONSTRAINT "invitation_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "audit_entry" (
    "bakery_id" UUID NOT NULL,
    "number" BIGINT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "person_id" UUID,
    "action" TEXT NOT NULL,
    "target_id" UUID,
    "entry_text" TEXT NOT NULL,
    "previous_hash" TEXT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "audit_entry_pkey" PRIMARY KEY ("bakery_id","number")
);

-- CreateTable
CREATE TABLE "audit_head" (
    "bakery_id" UUID NOT NULL,
    "number" BIGINT NOT NULL,
    "hash" TEXT NOT NULL,

    CONSTRAINT "audit_head_pkey" PRIMARY KEY ("bakery_id")
);

-- CreateIndex
CREATE INDEX "sign_in_pointer_bakery_id_target_id_idx" ON "sign_in_pointer"("bakery_id", "target_id");

-- CreateIndex
CREATE UNIQUE INDEX "person_bakery_id_email_key" ON "person"("bakery_id", "email");

-- CreateIndex
CREATE INDEX "session_bakery_id_person_id_opened_at_idx" ON "session"("bakery_id", "person_id", "opened_at");

-- CreateIndex
CREATE INDEX "invitation_bakery_id_invited_by_id_idx" ON "invitation"("bakery_id", "invited_by_id");

-- CreateIndex
CREATE INDEX "invitation_bakery_id_person_id_idx" ON "invitation"("bakery_id", "person_id");

-- CreateIndex
CREATE INDEX "audit_entry_bakery_id_target_id_number_idx" ON "audit_entry"("bakery_id", "target_id", "number");

-- AddForeignKey
ALTER TABLE "sign_in_pointer" ADD CONSTRAINT "sign_in_pointer_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "person" ADD CONSTRAINT "person_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "password" ADD CONSTRAINT "password_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "password" ADD CONSTRAINT "password_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_bakery_id_invited_by_id_fkey" FOREIGN KEY ("bakery_id", "invited_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "audit_entry" ADD CONSTRAINT "audit_entry_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "audit_head" ADD CONSTRAINT "audit_head_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- From here on by hand: what the schema file cannot say.

ALTER TABLE "install"
    ADD CONSTRAINT "install_only_one" CHECK ("id" = 1),
    ADD CONSTRAINT "install_first_run_whole" CHECK (("first_run_hash" IS NULL) = ("first_run_ends_at" IS NULL));

ALTER TABLE "sign_in_pointer"
    ADD CONSTRAINT "sign_in_pointer_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$');

ALTER TABLE "sign_in_limit"
    ADD CONSTRAINT "sign_in_limit_hash_form" CHECK ("key_hash" ~ '^[0-9a-f]{64}$'),
    ADD CONSTRAINT "sign_in_limit_failures_range" CHECK ("failures" >= 0);

ALTER TABLE "bakery"
    ADD CONSTRAINT "bakery_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 120),
    ADD CONSTRAINT "bakery_currency_form" CHECK ("currency" ~ '^[A-Z]{3}$'),
    ADD CONSTRAINT "bakery_region_known" CHECK ("region" IN ('eu', 'uk', 'us', 'other')),
    ADD CONSTRAINT "bakery_revision_range" CHECK ("revision" >= 1);

ALTER TABLE "person"
    ADD CONSTRAINT "person_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 80),
    ADD CONSTRAINT "person_email_form" CHECK ("email" = lower("email") AND char_length("email") BETWEEN 3 AND 254 AND position('@' IN "email") > 1),
    ADD CONSTRAINT "person_ended_later" CHECK ("ended_at" IS NULL OR "ended_at" >= "active_at"),
    ADD CONSTRAINT "person_revision_range" CHECK ("revision" >= 1);

ALTER TABLE "password"
    ADD CONSTRAINT "password_hash_form" CHECK ("hash" LIKE '$argon2id$%');

ALTER TABLE "session"
    ADD CONSTRAINT "session_ends_later" CHECK ("ends_at" > "opened_at" AND "last_seen_at" >= "opened_at"),
    ADD CONSTRAINT "session_device_length" CHECK (char_length("device") <= 200);

ALTER TABLE "invitation"
    ADD CONSTRAINT "invitation_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 80),
    ADD CONSTRAINT "invitation_email_form" CHECK ("email" = lower("email") AND char_length("email") BETWEEN 3 AND 254 AND position('@' IN "email") > 1),
    ADD CONSTRAINT "invitation_ends_later" CHECK ("ends_at" > "created_at"),
    ADD CONSTRAINT "invitation_reset_names_person" CHECK (("purpose" = 'reset') = ("person_id" IS NOT NULL)),
    ADD CONSTRAINT "invitation_one_end" CHECK ("used_at" IS NULL OR "withdrawn_at" IS NULL);

ALTER TABLE "audit_entry"
    ADD CONSTRAINT "audit_entry_number_range" CHECK ("number" >= 1),
    ADD CONSTRAINT "audit_entry_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$' AND "previous_hash" ~ '^[0-9a-f]{64}$');

ALTER TABLE "audit_head"
    ADD CONSTRAINT "audit_head_number_range" CHECK ("number" >= 0),
    ADD CONSTRAINT "audit_head_hash_form" CHECK ("hash" ~ '^[0-9a-f]{64}$');

-- One open invitation for an address; the app finds the former one and says so.
CREATE UNIQUE INDEX "invitation_one_open" ON "invitation" ("bakery_id", "email") WHERE "used_at" IS NULL AND "withdrawn_at" IS NULL;

-- Rows of a table that only grows are never changed nor removed, by whomever.
CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    RAISE EXCEPTION 'table % only grows', TG_TABLE_NAME USING ERRCODE = 'EV001';
END
$$;

CREATE TRIGGER "audit_entry_only_grows" BEFORE UPDATE OR DELETE ON "audit_entry" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "audit_entry_never_emptied" BEFORE TRUNCATE ON "audit_entry" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
