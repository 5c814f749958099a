-- As before, and over what was found later behind it. A trial of which nothing was has the seal that it had.
CREATE OR REPLACE FUNCTION "seal_of_rows"(bakery uuid, trial uuid) RETURNS text LANGUAGE sql STABLE
SET search_path = public, pg_temp SET TimeZone = 'UTC' SET extra_float_digits = 1 SET DateStyle = 'ISO' AS $$
    SELECT encode(sha256(convert_to(
        coalesce((
            SELECT string_agg(jsonb_build_array(b.id, b.arm_id, b.mixing_day_id, b.planned_order, b.code, b.kind, b.state, b.state_why, b.pieces_made, b.pieces_good, b.begun_at, b.done_at)::text, E'\n' ORDER BY b.id)
            FROM batch b WHERE b.bakery_id = bakery AND b.trial_id = trial
        ), '') || E'\n\n' || coalesce((
            SELECT string_agg(jsonb_build_array(r.id, r.batch_id, r.measure_id, r.piece, r.factor_level, r.repeat, r.value, r.value_entered, r.unit_entered, r.person_id, r.taken_at, r.received_at, r.supersedes_id, r.reason, r.content_hash, r.plausible_least, r.plausible_most)::text, E'\n' ORDER BY r.id)
            FROM reading r WHERE r.bakery_id = bakery AND r.trial_id = trial
        ), '') || coalesce(E'\n\n' || (
            SELECT string_agg(jsonb_build_array(w.id, w.batch_id, w.stage_id, w.ingredient_id, w.part, w.how, w.mass_g, w.mass_entered, w.unit_entered, w.person_id, w.taken_at, w.received_at, w.supersedes_id, w.reason, w.content_hash)::text, E'\n' ORDER BY w.id)
            FROM weighing w WHERE w.bakery_id = bakery AND w.trial_id = trial
        ), '') || coalesce(E'\n\n' || (
            SELECT string_agg(jsonb_build_array(c.id, c.batch_id, c.object, c.what, c.found_by_id, c.at, s.signs_as, s.signed_by_id, s.at)::text, E'\n' ORDER BY c.id)
            FROM found_cause c LEFT JOIN found_cause_signature s ON s.bakery_id = c.bakery_id AND s.found_cause_id = c.id
            WHERE c.bakery_id = bakery AND c.trial_id = trial
        ), ''), 'UTF8')), 'hex')
$$;
