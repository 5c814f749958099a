import { afterAll, beforeAll, expect, test } from 'vitest'
import { refusalOfConstraint } from '../../lib/kitchen/constraint-refusals'
import { connected, freshDatabase, type FreshDatabase } from '../support/database'

let database: FreshDatabase
beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

test('every constraint that a person is told of is in the database by that name', async () => {
  const { rows } = await connected(database.ownerUrl, (client) =>
    client.query<{ name: string }>(
      `SELECT c.relname AS name FROM pg_index i JOIN pg_class c ON c.oid = i.indexrelid
       JOIN pg_namespace n ON n.oid = c.relnamespace WHERE i.indisunique AND n.nspname = 'public'`,
    ),
  )
  const told = rows.flatMap(({ name }): [string, string][] => {
    const refusal = refusalOfConstraint(name)
    return refusal
      ? [[name, [refusal.code, ...refusal.problems.map((each) => `${each.path}:${each.code}`)].join(' ')]]
      : []
  })
  expect(Object.fromEntries(told)).toEqual({
    coming_photo_pkey: 'photo-clash',
    decision_standing_once: 'stale-moved-on',
    equipment_bakery_id_kind_name_key: 'invalid name:name-taken',
    formula_bakery_id_name_key: 'invalid name:formula-name-taken',
    ingredient_bakery_id_name_key: 'invalid name:name-taken',
    invitation_one_open: 'invalid email:already-invited',
    lot_code_once: 'invalid code:lot-code-taken',
    measure_bakery_id_name_key: 'invalid name:name-taken',
    note_pkey: 'note-clash',
    batch_cause_pkey: 'cause-clash',
    person_bakery_id_email_key: 'invalid email:email-taken',
    photo_pkey: 'photo-clash',
    reading_pkey: 'reading-clash',
    reading_place_taken: 'reading-there',
    reading_superseded_once: 'stale-moved-on',
    piece_count_pkey: 'count-clash',
    repair_baked_again_once: 'stale-moved-on',
    repair_day_added_once: 'stale-moved-on',
    settled_entry_pkey: 'stale-moved-on',
    equipment_check_pkey: 'check-clash',
    step_pkey: 'step-clash',
    station_name_once: 'invalid name:station-name-taken',
    weighing_first_once: 'stale-moved-on',
    weighing_superseded_once: 'stale-moved-on',
  })
  expect(refusalOfConstraint('batch_pkey')).toBeUndefined()
})
