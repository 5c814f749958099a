-- A line or stage could still come into a signed version in two ways: moved there from a draft by an update, which
-- looked only at where the row came from; and inserted by a transaction that read the version just before another one
-- signed it. Both versions are looked at now, and the row of the version is held while the line is written.
CREATE OR REPLACE FUNCTION "refuse_change_of_signed"() RETURNS trigger LANGUAGE plpgsql AS $$
DECLARE
    is_signed boolean;
BEGIN
    IF TG_TABLE_NAME = 'formula_version' THEN
        is_signed := OLD.signed_at IS NOT NULL;
    ELSE
        is_signed := (TG_OP <> 'INSERT' AND "formula_version_is_signed"(OLD.bakery_id, OLD.version_id))
            OR (TG_OP <> 'DELETE' AND "formula_version_is_signed"(NEW.bakery_id, NEW.version_id));
    END IF;
    IF is_signed THEN
        RAISE EXCEPTION 'the formula version is signed' USING ERRCODE = 'EV002';
    END IF;
    RETURN CASE WHEN TG_OP = 'DELETE' THEN OLD ELSE NEW END;
END
$$;

-- FOR SHARE waits for a signature that is being given, and makes it wait.
CREATE FUNCTION "formula_version_is_signed"(in_bakery uuid, version uuid) RETURNS boolean LANGUAGE plpgsql AS $$
DECLARE
    at timestamptz;
BEGIN
    SELECT v.signed_at INTO at FROM formula_version v WHERE v.bakery_id = in_bakery AND v.id = version FOR SHARE;
    RETURN at IS NOT NULL;
END
$$;
