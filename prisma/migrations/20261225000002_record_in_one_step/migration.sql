-- The record in one step: everybody of a bakery who keeps something waits for its head, so what is done while it is held
-- is done here, and not on the way between two machines.

-- Whether somebody who was found is still who they were: the session or the shift open, the person here and of the same
-- role, the tablet not withdrawn. A job's place nobody can take away; a kind that is not known is nobody.
CREATE FUNCTION "is_still_there"(of_bakery uuid, who jsonb, at_time timestamptz) RETURNS boolean LANGUAGE sql STABLE SET search_path = public, pg_temp AS $$
  SELECT CASE
    WHEN who ->> 'kind' = 'job' THEN true
    WHEN who ->> 'kind' = 'desk' THEN EXISTS (
      SELECT 1 FROM session JOIN person ON person.bakery_id = session.bakery_id AND person.id = session.person_id
      WHERE session.bakery_id = of_bakery AND session.id = (who ->> 'sessionId')::uuid
        AND session.ended_at IS NULL AND session.ends_at > at_time
        AND person.id = (who ->> 'personId')::uuid AND person.ended_at IS NULL AND person.role = (who ->> 'role')::role)
    WHEN who ->> 'kind' = 'station' AND who ->> 'personId' IS NULL THEN EXISTS (
      SELECT 1 FROM station
      WHERE station.bakery_id = of_bakery AND station.id = (who ->> 'stationId')::uuid AND station.withdrawn_at IS NULL)
    WHEN who ->> 'kind' = 'station' THEN EXISTS (
      SELECT 1 FROM station
      JOIN station_shift AS shift ON shift.bakery_id = station.bakery_id AND shift.station_id = station.id
      JOIN person ON person.bakery_id = shift.bakery_id AND person.id = shift.person_id
      WHERE station.bakery_id = of_bakery AND station.id = (who ->> 'stationId')::uuid AND station.withdrawn_at IS NULL
        AND shift.id = (who ->> 'shiftId')::uuid AND shift.ended_at IS NULL AND shift.ends_at > at_time
        AND person.id = (who ->> 'personId')::uuid AND person.ended_at IS NULL AND person.role = (who ->> 'role')::role)
    ELSE false
  END
$$;

-- Locks the head of a bakery's record, looks whether who must still be there is, puts place and former hash into the text
-- that the caller wrote around them, adds the entry and tells who listens. Each statement of it sees what was kept before
-- the lock was given. Says 'added', 'gone' where somebody is not there any more, or 'no-record'.
CREATE FUNCTION "append_audit"(
  of_bakery uuid,
  at_time timestamptz,
  by_kind caller_kind,
  by_person uuid,
  noted_action text,
  noted_target uuid,
  text_before text,
  text_after text,
  must_be_still jsonb,
  tell text
) RETURNS text LANGUAGE plpgsql VOLATILE SET search_path = public, pg_temp AS $$
DECLARE
  head record;
  full_text text;
  full_hash text;
BEGIN
  SELECT number + 1 AS next_number, hash INTO head FROM audit_head WHERE bakery_id = of_bakery FOR UPDATE;
  IF NOT FOUND THEN
    RETURN 'no-record';
  END IF;
  IF must_be_still IS NOT NULL AND NOT is_still_there(of_bakery, must_be_still, at_time) THEN
    RETURN 'gone';
  END IF;
  full_text := text_before || '"number":"' || head.next_number || '","previous":"' || head.hash || '"' || text_after;
  full_hash := encode(sha256(convert_to(full_text, 'UTF8')), 'hex');
  INSERT INTO audit_entry (bakery_id, number, at, by, person_id, action, target_id, entry_text, previous_hash, hash)
  VALUES (of_bakery, head.next_number, at_time, by_kind, by_person, noted_action, noted_target, full_text, head.hash, full_hash);
  UPDATE audit_head SET number = head.next_number, hash = full_hash WHERE bakery_id = of_bakery;
  PERFORM pg_notify(tell, of_bakery::text);
  RETURN 'added';
END
$$;
