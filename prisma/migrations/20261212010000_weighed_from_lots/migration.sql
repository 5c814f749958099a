-- What was weighed names the lots that it was taken from, each with what it gave. The ingredient is in both keys, so a lot
-- of another ingredient fits nowhere.
-- CreateTable
CREATE TABLE "weighing_lot" (
    "bakery_id" UUID NOT NULL,
    "weighing_id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "ingredient_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "mass_g" DOUBLE PRECISION,
    "mass_entered" TEXT,

    CONSTRAINT "weighing_lot_pkey" PRIMARY KEY ("bakery_id","weighing_id","lot_id")
);

-- CreateIndex
CREATE INDEX "weighing_lot_bakery_id_ingredient_id_weighing_id_idx" ON "weighing_lot"("bakery_id", "ingredient_id", "weighing_id");

-- CreateIndex
CREATE INDEX "weighing_lot_bakery_id_ingredient_id_lot_id_idx" ON "weighing_lot"("bakery_id", "ingredient_id", "lot_id");

-- CreateIndex
CREATE UNIQUE INDEX "weighing_lot_bakery_id_weighing_id_position_key" ON "weighing_lot"("bakery_id", "weighing_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "weighing_bakery_id_ingredient_id_id_key" ON "weighing"("bakery_id", "ingredient_id", "id");

-- AddForeignKey
ALTER TABLE "weighing_lot" ADD CONSTRAINT "weighing_lot_bakery_id_ingredient_id_weighing_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id", "weighing_id") REFERENCES "weighing"("bakery_id", "ingredient_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "weighing_lot" ADD CONSTRAINT "weighing_lot_bakery_id_ingredient_id_lot_id_fkey" FOREIGN KEY ("bakery_id", "ingredient_id", "lot_id") REFERENCES "lot"("bakery_id", "ingredient_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

ALTER TABLE "weighing_lot"
    ADD CONSTRAINT "weighing_lot_mass_whole" CHECK (("mass_g" IS NULL) = ("mass_entered" IS NULL)),
    ADD CONSTRAINT "weighing_lot_mass_range" CHECK ("mass_g" > 0 AND "mass_g" < 'Infinity'),
    ADD CONSTRAINT "weighing_lot_position_range" CHECK ("position" >= 0);

CREATE TRIGGER "weighing_lot_only_grows" BEFORE UPDATE OR DELETE ON "weighing_lot" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "weighing_lot_never_emptied" BEFORE TRUNCATE ON "weighing_lot" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- As with weighings: nothing comes to a trial that has ended, whoever writes it.
CREATE FUNCTION "weighing_lot_before_closing"() RETURNS trigger LANGUAGE plpgsql SET search_path = public, pg_temp AS $$
BEGIN
    IF EXISTS (
        SELECT 1 FROM added
        JOIN weighing ON weighing.bakery_id = added.bakery_id AND weighing.id = added.weighing_id
        JOIN trial ON trial.bakery_id = weighing.bakery_id AND trial.id = weighing.trial_id
        WHERE trial.state IN ('closed', 'stopped')
    ) THEN
        RAISE EXCEPTION 'the readings are closed' USING ERRCODE = 'EV007';
    END IF;
    RETURN NULL;
END
$$;

CREATE TRIGGER "weighing_lot_before_closing" AFTER INSERT ON "weighing_lot" REFERENCING NEW TABLE AS added FOR EACH STATEMENT EXECUTE FUNCTION "weighing_lot_before_closing"();
