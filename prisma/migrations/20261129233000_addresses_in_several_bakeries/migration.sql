-- One e-mail address may sign in to several bakeries, so that joining one does not tell of another.
ALTER TABLE "sign_in_pointer" DROP CONSTRAINT "sign_in_pointer_pkey",
    ADD CONSTRAINT "sign_in_pointer_pkey" PRIMARY KEY ("hash", "bakery_id");
