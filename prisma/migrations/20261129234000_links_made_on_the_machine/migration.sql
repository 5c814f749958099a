-- A link that whoever runs the install made for an owner, on the machine itself: nobody of the bakery stands behind it.
ALTER TABLE "invitation" ADD COLUMN "on_machine" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "invitation" ALTER COLUMN "on_machine" DROP DEFAULT;
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_on_machine_form" CHECK (NOT "on_machine" OR ("purpose" = 'reset' AND "person_id" IS NOT NULL AND "person_id" = "invited_by_id"));
