-- Who wrote content of a trial's draft. Somebody stays an author when others change the draft after them.
-- CreateTable
CREATE TABLE "trial_author" (
    "bakery_id" UUID NOT NULL,
    "trial_id" UUID NOT NULL,
    "person_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "trial_author_pkey" PRIMARY KEY ("bakery_id","trial_id","person_id")
);

-- CreateIndex
CREATE INDEX "trial_author_bakery_id_person_id_idx" ON "trial_author"("bakery_id", "person_id");

-- AddForeignKey
ALTER TABLE "trial_author" ADD CONSTRAINT "trial_author_bakery_id_trial_id_fkey" FOREIGN KEY ("bakery_id", "trial_id") REFERENCES "trial"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- AddForeignKey
ALTER TABLE "trial_author" ADD CONSTRAINT "trial_author_bakery_id_person_id_fkey" FOREIGN KEY ("bakery_id", "person_id") REFERENCES "person"("bakery_id", "id") ON DELETE RESTRICT ON UPDATE NO ACTION;

-- Of trials that are there already, the record says who wrote them; who proposed one is an author in any case.
INSERT INTO "trial_author" ("bakery_id", "trial_id", "person_id", "at")
SELECT bakery_id, target_id, person_id, min("at") FROM (
    SELECT a.bakery_id, a.target_id, a.person_id, a."at" FROM "audit_entry" a
        JOIN "trial" t ON t.bakery_id = a.bakery_id AND t.id = a.target_id
        JOIN "person" p ON p.bakery_id = a.bakery_id AND p.id = a.person_id
        WHERE a.action IN ('trials.draft-trial', 'trials.change-draft-trial')
    UNION ALL
    SELECT t.bakery_id, t.id, t.proposed_by_id, t.created_at FROM "trial" t
) AS written GROUP BY bakery_id, target_id, person_id;

CREATE TRIGGER "trial_author_only_grows" BEFORE UPDATE OR DELETE ON "trial_author" FOR EACH ROW EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "trial_author_never_emptied" BEFORE TRUNCATE ON "trial_author" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();

-- AlterTable: nobody approved as a co-author before this.
ALTER TABLE "plan_decision" ADD COLUMN "by_co_author" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "plan_decision" ALTER COLUMN "by_co_author" DROP DEFAULT;

-- Of an approved trial only where it stands may change, and only along its way. Every other column is held, those that
-- come later too. An ended trial is held whole. 'baking' goes back to 'approved' when its first dough is undone.
CREATE OR REPLACE FUNCTION "refuse_change_of_declared"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    moving text[] := ARRAY['state', 'closed_at', 'closed_why', 'revision'];
BEGIN
    IF OLD.state NOT IN ('approved', 'baking', 'closed', 'stopped') THEN
        RETURN CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
    END IF;
    IF TG_OP = 'DELETE'
        OR to_jsonb(NEW) - moving IS DISTINCT FROM to_jsonb(OLD) - moving
        OR NEW.revision < OLD.revision
        OR (OLD.state IN ('closed', 'stopped') AND (NEW.state, NEW.closed_at, NEW.closed_why) IS DISTINCT FROM (OLD.state, OLD.closed_at, OLD.closed_why))
        OR (OLD.state = 'approved' AND NEW.state NOT IN ('approved', 'baking', 'closed', 'stopped'))
        OR (OLD.state = 'baking' AND NEW.state NOT IN ('baking', 'approved', 'closed', 'stopped'))
        OR (NEW.state IN ('approved', 'baking') AND (NEW.closed_at, NEW.closed_why) IS DISTINCT FROM (OLD.closed_at, OLD.closed_why))
    THEN
        RAISE EXCEPTION 'the plan is approved' USING ERRCODE = 'EV003';
    END IF;
    RETURN NEW;
END
$$;

-- The moves of a batch: forwards, also over several steps at once (readings that were taken elsewhere), out as lost or
-- set aside before it is measured, and one step back or back in, for a move that is undone.
CREATE FUNCTION "batch_may_move"(before batch_state, after batch_state) RETURNS boolean LANGUAGE sql IMMUTABLE AS $$
    SELECT CASE before
        WHEN 'waiting' THEN true
        WHEN 'weighing' THEN true
        WHEN 'in_work' THEN after <> 'waiting'
        WHEN 'baked' THEN after NOT IN ('waiting', 'weighing')
        WHEN 'measured' THEN after IN ('measured', 'baked')
        WHEN 'lost' THEN after NOT IN ('set_aside', 'measured')
        WHEN 'set_aside' THEN after NOT IN ('lost', 'measured')
    END
$$;

-- From approval on, a batch keeps its place, its dough and its code, and moves only along its way while it is baked.
CREATE FUNCTION "refuse_change_of_batch"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    moving text[] := ARRAY['state', 'state_why', 'pieces_made', 'pieces_good', 'begun_at', 'done_at', 'moved_from', 'moved_at', 'moved_by_id', 'moved_revision', 'revision'];
    trial_state_now trial_state;
BEGIN
    -- Waits for an approval or an end that is being given, and not for another dough of the trial.
    SELECT t.state INTO trial_state_now FROM trial t WHERE t.bakery_id = OLD.bakery_id AND t.id = OLD.trial_id FOR KEY SHARE;
    IF trial_state_now NOT IN ('approved', 'baking', 'closed', 'stopped') THEN
        RETURN CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
    END IF;
    IF TG_OP = 'DELETE'
        OR to_jsonb(NEW) - moving IS DISTINCT FROM to_jsonb(OLD) - moving
        OR trial_state_now IN ('closed', 'stopped')
        OR NEW.revision < OLD.revision
        OR NOT "batch_may_move"(OLD.state, NEW.state)
    THEN
        RAISE EXCEPTION 'the batch stands as it is' USING ERRCODE = 'EV005';
    END IF;
    RETURN NEW;
END
$$;

-- A mixing day may get another date; its number and its trial stay.
CREATE FUNCTION "refuse_change_of_mixing_day"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
    IF (TG_OP = 'DELETE' OR to_jsonb(NEW) - 'day' IS DISTINCT FROM to_jsonb(OLD) - 'day') AND "plan_is_approved"(OLD.bakery_id, OLD.trial_id) THEN
        RAISE EXCEPTION 'the plan is approved' USING ERRCODE = 'EV003';
    END IF;
    RETURN CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
END
$$;

CREATE TRIGGER "batch_moves" BEFORE UPDATE OR DELETE ON "batch" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_batch"();
CREATE TRIGGER "batch_never_emptied" BEFORE TRUNCATE ON "batch" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
CREATE TRIGGER "mixing_day_frozen" BEFORE UPDATE OR DELETE ON "mixing_day" FOR EACH ROW EXECUTE FUNCTION "refuse_change_of_mixing_day"();
CREATE TRIGGER "mixing_day_never_emptied" BEFORE TRUNCATE ON "mixing_day" FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
