-- What is read before a dough is mixed, for the bakeries that there are; a new one gets them as it begins. One that has
-- a measure of its own by such a name keeps it: screens show these by their code.
INSERT INTO measure (
    bakery_id, id, code, name, unit, digits, level, direction, derivation, plausible_least, plausible_most,
    repeats, repeat_limit, method, position, revision, created_at
)
SELECT
    b.bakery_id, gen_random_uuid(), said.code,
    CASE
        WHEN EXISTS (SELECT 1 FROM measure own WHERE own.bakery_id = b.bakery_id AND lower(own.name) = lower(said.name))
        THEN said.name || ' (' || said.code || ')'
        ELSE said.name
    END,
    '°C', 1, 'batch', 'none', NULL, said.least, said.most, 1, NULL, said.method,
    (SELECT coalesce(max(m.position), -1) FROM measure m WHERE m.bakery_id = b.bakery_id) + said.nth, 1, now()
FROM bakery b
CROSS JOIN (
    VALUES
        (1, 'flour-temp', 'Flour temperature', 5, 45, 'probe in the middle of the flour, right before mixing'),
        (2, 'room-temp', 'Room temperature', 5, 45, 'beside the mixer, right before mixing'),
        (3, 'water-temp', 'Water temperature', 0, 60, 'of the water with any ice melted, as it goes in')
) AS said (nth, code, name, least, most, method)
WHERE NOT EXISTS (SELECT 1 FROM measure m WHERE m.bakery_id = b.bakery_id AND m.code = said.code);
