-- Tap water may cost nothing, and a costing needs to be told so: a missing price is not a price of nothing.
ALTER TABLE "price"
    DROP CONSTRAINT "price_pack_price_range",
    ADD CONSTRAINT "price_pack_price_range" CHECK ("pack_price" >= 0 AND "pack_price" <= 100000000);
