-- CreateEnum
CREATE TYPE "ingredient_kind" AS ENUM ('flour', 'water', 'salt', 'leaven', 'fat', 'sugar', 'dairy', 'egg', 'malt', 'improver', 'seed_or_grain', 'other');

-- CreateEnum
CREATE TYPE "allergen" AS ENUM ('gluten', 'crustaceans', 'egg', 'fish', 'peanuts', 'soya', 'milk', 'nuts', 'celery', 'mustard', 'sesame', 'sulphites', 'lupin', 'molluscs');

-- CreateEnum
CREATE TYPE "figure" AS ENUM ('water', 'protein', 'fat', 'carbohydrate', 'sugars', 'fibre', 'salt');

-- CreateEnum
CREATE TYPE "equipment_kind" AS ENUM ('scale', 'thermometer', 'mixer', 'proofer', 'oven', 'pan', 'volume_gauge');

-- CreateEnum
CREATE TYPE "stage_kind" AS ENUM ('final_dough', 'pre_ferment', 'scald', 'soaker');

-- CreateTable
CREATE TABLE "ingredient" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "kind" "ingredient_kind" NOT NULL,
    "label_name" TEXT NOT NULL,
    "active_name" TEXT,
    "active_share" DOUBLE PRECISION,
    "customary_least_pct" DOUBLE PRECISION,
    "customary_most_pct" DOUBLE PRECISION,
    "customary_source" TEXT,
    "allergens" "allergen"[],
    "allergens_checked_at" TIMESTAMPTZ(3),
    "dust_caution" BOOLEAN NOT NULL,
    "note" TEXT NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "revision" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "ingredient_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "ingredient_figure" (
    "bakery_id" UUID NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "figure" "figure" NOT NULL,
    "g_per_100_g" DOUBLE PRECISION NOT NULL,
    "source" TEXT NOT NULL,

    CONSTRAINT "ingredient_figure_pkey" PRIMARY KEY ("bakery_id","ingredient_id","figure")
);

-- CreateTable
CREATE TABLE "price" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "holds_from" DATE NOT NULL,
    "pack_mass_g" DOUBLE PRECISION NOT NULL,
    "pack_price" DECIMAL(14,4) NOT NULL,
    "currency" CHAR(3) NOT NULL,
    "supplier" TEXT NOT NULL,
    "entered_by_id" UUID NOT NULL,
    "entered_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "price_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "equipment" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "kind" "equipment_kind" NOT NULL,
    "name" TEXT NOT NULL,
    "least_g" DOUBLE PRECISION,
    "most_g" DOUBLE PRECISION,
    "resolution_g" DOUBLE PRECISION,
    "repeatability_g" DOUBLE PRECISION,
    "resolution_c" DOUBLE PRECISION,
    "volume_ml" DOUBLE PRECISION,
    "decks" INTEGER,
    "places_per_deck" INTEGER,
    "friction_c_per_min" DOUBLE PRECISION,
    "note" TEXT NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "revision" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "equipment_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "formula" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "formula_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "formula_version" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "formula_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "from_version_id" UUID,
    "reason" TEXT NOT NULL,
    "scaling_mass_g" DOUBLE PRECISION NOT NULL,
    "pieces" INTEGER NOT NULL,
    "dough_loss_pct" DOUBLE PRECISION NOT NULL,
    "dough_temp_c" DOUBLE PRECISION NOT NULL,
    "mix_time_s" INTEGER NOT NULL,
    "bulk_time_s" INTEGER NOT NULL,
    "proof_time_s" INTEGER NOT NULL,
    "bake_temp_c" DOUBLE PRECISION NOT NULL,
    "bake_time_s" INTEGER NOT NULL,
    "method" TEXT NOT NULL,
    "drafted_by_id" UUID NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "revision" INTEGER NOT NULL,
    "content_text" TEXT,
    "content_hash" TEXT,
    "signed_at" TIMESTAMPTZ(3),
    "effective_at" TIMESTAMPTZ(3),

    CONSTRAINT "formula_version_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "formula_stage" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" "stage_kind" NOT NULL,
    "name" TEXT NOT NULL,

    CONSTRAINT "formula_stage_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "formula_line" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version_id" UUID NOT NULL,
    "stage_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "pct_flour" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "formula_line_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateTable
CREATE TABLE "signature" (
    "bakery_id" UUID NOT NULL,
    "id" UUID NOT NULL,
    "version_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "person_name" TEXT NOT NULL,
    "role" "role" NOT NULL,
    "meaning" TEXT NOT NULL,
    "content_hash" TEXT NOT NULL,
    "by_proposer" BOOLEAN NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "signature_pkey" PRIMARY KEY ("bakery_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "ingredient_bakery_id_name_key" ON "ingredient"("bakery_id", "name");

-- CreateIndex
CREATE INDEX "price_bakery_id_ingredient_id_holds_from_idx" ON "price"("bakery_id", "ingredient_id", "holds_from");

-- CreateIndex
CREATE INDEX "price_bakery_id_entered_by_id_idx" ON "price"("bakery_id", "entered_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "equipment_bakery_id_kind_name_key" ON "equipment"("bakery_id", "kind", "name");

-- CreateIndex
CREATE UNIQUE INDEX "formula_bakery_id_name_key" ON "formula"("bakery_id", "name");

-- CreateIndex
CREATE INDEX "formula_version_bakery_id_from_version_id_idx" ON "formula_version"("bakery_id", "from_version_id");

-- CreateIndex
CREATE INDEX "formula_version_bakery_id_drafted_by_id_idx" ON "formula_version"("bakery_id", "drafted_by_id");

-- CreateIndex
CREATE UNIQUE INDEX "formula_version_bakery_id_formula_id_number_key" ON "formula_version"("bakery_id", "formula_id", "number");

-- CreateIndex
CREATE UNIQUE INDEX "formula_stage_bakery_id_version_id_position_key" ON "formula_stage"("bakery_id", "version_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "formula_stage_bakery_id_version_id_id_key" ON "formula_stage"("bakery_id", "version_id", "id");

-- CreateIndex
CREATE INDEX "formula_line_bakery_id_version_id_stage_id_idx" ON "formula_line"("bakery_id", "version_id", "stage_id");

-- CreateIndex
CREATE INDEX "formula_line_bakery_id_ingredient_id_idx" ON "formula_line"("bakery_id", "ingredient_id");

-- CreateIndex
CREATE UNIQUE INDEX "formula_line_bakery_id_version_id_position_key" ON "formula_line"("bakery_id", "version_id", "position");

-- CreateIndex
CREATE INDEX "signature_bakery_id_person_id_idx" ON "signature"("bakery_id", "person_id");

-- CreateIndex
CREATE UNIQUE INDEX "signature_bakery_id_version_id_person_id_key" ON "signature"("bakery_id", "version_id", "person_id");

-- AddForeignKey
ALTER TABLE "ingredient" ADD CONSTRAINT "ingredient_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "ingredient_figure" ADD CONSTRAINT "ingredient_figure_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "price" ADD CONSTRAINT "price_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "price" ADD CONSTRAINT "price_bakery_id_entered_by_id_fkey" FOREIGN KEY ("bakery_id", "entered_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "equipment" ADD CONSTRAINT "equipment_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "formula" ADD CONSTRAINT "formula_bakery_id_fkey" FOREIGN KEY ("bakery_id") REFERENCES "bakery"("bakery_id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "formula_version" ADD CONSTRAINT "formula_version_bakery_id_formula_id_fkey" FOREIGN KEY ("bakery_id", "formula_id") REFERENCES "formula"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "formula_version" ADD CONSTRAINT "formula_version_bakery_id_from_version_id_fkey" FOREIGN KEY ("bakery_id", "from_version_id") REFERENCES "formula_version"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "formula_version" ADD CONSTRAINT "formula_version_bakery_id_drafted_by_id_fkey" FOREIGN KEY ("bakery_id", "drafted_by_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "formula_stage" ADD CONSTRAINT "formula_stage_bakery_id_version_id_fkey" FOREIGN KEY ("bakery_id", "version_id") REFERENCES "formula_version"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "formula_line" ADD CONSTRAINT "formula_line_bakery_id_version_id_fkey" FOREIGN KEY ("bakery_id", "version_id") REFERENCES "formula_version"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "formula_line" ADD CONSTRAINT "formula_line_bakery_id_version_id_stage_id_fkey" FOREIGN KEY ("bakery_id", "version_id", "stage_id") REFERENCES "formula_stage"("bakery_id", "version_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "formula_line" ADD CONSTRAINT "formula_line_bakery_id_ingredient_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id") REFERENCES "ingredient"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "signature" ADD CONSTRAINT "signature_bakery_id_version_id_fkey" FOREIGN KEY ("bakery_id", "version_id") REFERENCES "formula_version"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "signature" ADD CONSTRAINT "signature_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- From here on by hand: what the schema file cannot say.

ALTER TABLE "ingredient"
    ADD CONSTRAINT "ingredient_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 120 AND char_length(btrim("label_name")) BETWEEN 1 AND 200),
    ADD CONSTRAINT "ingredient_active_whole" CHECK (("active_name" IS NULL) = ("active_share" IS NULL)),
    ADD CONSTRAINT "ingredient_active_share_range" CHECK ("active_share" > 0 AND "active_share" <= 1),
    ADD CONSTRAINT "ingredient_customary_range" CHECK ("customary_least_pct" >= 0 AND "customary_most_pct" >= "customary_least_pct" AND "customary_most_pct" <= 200),
    ADD CONSTRAINT "ingredient_customary_whole" CHECK (("customary_most_pct" IS NULL) = ("customary_source" IS NULL) AND ("customary_most_pct" IS NULL) = ("customary_least_pct" IS NULL)),
    ADD CONSTRAINT "ingredient_revision_range" CHECK ("revision" >= 1);

ALTER TABLE "ingredient_figure"
    ADD CONSTRAINT "ingredient_figure_range" CHECK ("g_per_100_g" BETWEEN 0 AND 100),
    ADD CONSTRAINT "ingredient_figure_source_length" CHECK (char_length(btrim("source")) BETWEEN 1 AND 200);

ALTER TABLE "price"
    ADD CONSTRAINT "price_pack_mass_range" CHECK ("pack_mass_g" > 0 AND "pack_mass_g" <= 100000000),
    ADD CONSTRAINT "price_pack_price_range" CHECK ("pack_price" > 0 AND "pack_price" <= 100000000),
    ADD CONSTRAINT "price_currency_form" CHECK ("currency" ~ '^[A-Z]{3}$');

ALTER TABLE "equipment"
    ADD CONSTRAINT "equipment_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 80),
    ADD CONSTRAINT "equipment_scale_whole" CHECK ("kind" <> 'scale' OR ("most_g" > 0 AND "resolution_g" > 0 AND "resolution_g" < "most_g")),
    ADD CONSTRAINT "equipment_mixer_whole" CHECK ("kind" <> 'mixer' OR ("least_g" >= 0 AND "most_g" > "least_g")),
    ADD CONSTRAINT "equipment_oven_whole" CHECK ("kind" <> 'oven' OR ("decks" BETWEEN 1 AND 50 AND "places_per_deck" BETWEEN 1 AND 500)),
    ADD CONSTRAINT "equipment_volume_whole" CHECK ("kind" NOT IN ('pan', 'volume_gauge') OR "volume_ml" > 0),
    ADD CONSTRAINT "equipment_thermometer_whole" CHECK ("kind" <> 'thermometer' OR "resolution_c" > 0),
    ADD CONSTRAINT "equipment_revision_range" CHECK ("revision" >= 1);

ALTER TABLE "formula"
    ADD CONSTRAINT "formula_name_length" CHECK (char_length(btrim("name")) BETWEEN 1 AND 120);

ALTER TABLE "formula_version"
    ADD CONSTRAINT "formula_version_number_range" CHECK ("number" >= 1),
    ADD CONSTRAINT "formula_version_pieces_range" CHECK ("pieces" BETWEEN 1 AND 10000 AND "scaling_mass_g" > 0 AND "scaling_mass_g" <= 50000),
    ADD CONSTRAINT "formula_version_loss_range" CHECK ("dough_loss_pct" >= 0 AND "dough_loss_pct" < 50),
    ADD CONSTRAINT "formula_version_temperatures_range" CHECK ("dough_temp_c" BETWEEN 0 AND 45 AND "bake_temp_c" BETWEEN 50 AND 400),
    ADD CONSTRAINT "formula_version_times_range" CHECK (least("mix_time_s", "bulk_time_s", "proof_time_s", "bake_time_s") >= 0 AND greatest("mix_time_s", "bulk_time_s", "proof_time_s", "bake_time_s") <= 604800),
    ADD CONSTRAINT "formula_version_signed_whole" CHECK (("signed_at" IS NULL) = ("effective_at" IS NULL) AND ("signed_at" IS NULL OR ("content_text" IS NOT NULL AND "content_hash" IS NOT NULL))),
    ADD CONSTRAINT "formula_version_hash_form" CHECK ("content_hash" ~ '^[0-9a-f]{64}$'),
    ADD CONSTRAINT "formula_version_revision_range" CHECK ("revision" >= 1);

ALTER TABLE "formula_stage"
    ADD CONSTRAINT "formula_stage_name_length" CHECK (char_length("name") <= 80),
    ADD CONSTRAINT "formula_stage_position_range" CHECK ("position" >= 0);

ALTER TABLE "formula_line"
    ADD CONSTRAINT "formula_line_pct_range" CHECK ("pct_flour" > 0 AND "pct_flour" <= 1000),
    ADD CONSTRAINT "formula_line_position_range" CHECK ("position" >= 0);

ALTER TABLE "signature"
    ADD CONSTRAINT "signature_hash_form" CHECK ("content_hash" ~ '^[0-9a-f]{64}$'),
    ADD CONSTRAINT "signature_meaning_length" CHECK (char_length("meaning") BETWEEN 1 AND 400);

CREATE TRIGGER "price_only_grows" BEFORE UPDATE OR DELETE ON "price" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "price_never_emptied" BEFORE TRUNCATE ON "price" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "signature_only_grows" BEFORE UPDATE OR DELETE ON "signature" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "signature_never_emptied" BEFORE TRUNCATE ON "signature" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- A signed version, its stages and its lines stand as they were signed.
CREATE FUNCTION "refuse_change_of_signed"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    row_now record := CASE WHEN TG_OP = 'INSERT' THEN NEW ELSE OLD END;
    version_at timestamptz;
BEGIN
    IF TG_TABLE_NAME = 'formula_version' THEN
        version_at := row_now.signed_at;
    ELSE
        SELECT v.signed_at INTO version_at FROM formula_version v WHERE v.bakery_id = row_now.bakery_id AND v.id = row_now.version_id;
    END IF;
    IF version_at IS NOT NULL THEN
        RAISE EXCEPTION 'the formula version is signed' USING ERRCODE = 'EV002';
    END IF;
    RETURN CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
END
$$;

CREATE TRIGGER "formula_version_frozen" BEFORE UPDATE OR DELETE ON "formula_version" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_signed"();
CREATE TRIGGER "formula_version_never_emptied" BEFORE TRUNCATE ON "formula_version" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "formula_stage_frozen" BEFORE INSERT OR UPDATE OR DELETE ON "formula_stage" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_signed"();
CREATE TRIGGER "formula_stage_never_emptied" BEFORE TRUNCATE ON "formula_stage" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "formula_line_frozen" BEFORE INSERT OR UPDATE OR DELETE ON "formula_line" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_signed"();
CREATE TRIGGER "formula_line_never_emptied" BEFORE TRUNCATE ON "formula_line" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
