import 'server-only'
import { Refusal } from './refusal'

/**
 * What a person is told when the database refuses by one of these constraints. The database judges: nothing is
 * looked up first and inserted after. A constraint that is not here is a bug.
 */
const refusalByConstraint: Record<string, () => Refusal> = {
  person_bakery_id_email_key: () => Refusal.at('email', 'email-taken'),
  formula_bakery_id_name_key: () => Refusal.at('name', 'formula-name-taken'),
  invitation_one_open: () => Refusal.at('email', 'already-invited'),
  station_name_once: () => Refusal.at('name', 'station-name-taken'),
  ingredient_bakery_id_name_key: () => Refusal.at('name', 'name-taken'),
  lot_code_once: () => Refusal.at('code', 'lot-code-taken'),
  equipment_bakery_id_kind_name_key: () => Refusal.at('name', 'name-taken'),
  measure_bakery_id_name_key: () => Refusal.at('name', 'name-taken'),
  decision_standing_once: () => new Refusal('stale-moved-on'),
  note_pkey: () => new Refusal('note-clash'),
  photo_pkey: () => new Refusal('photo-clash'),
  coming_photo_pkey: () => new Refusal('photo-clash'),
  equipment_check_pkey: () => new Refusal('check-clash'),
  piece_count_pkey: () => new Refusal('count-clash'),
  step_pkey: () => new Refusal('step-clash'),
  batch_cause_pkey: () => new Refusal('cause-clash'),
  reading_pkey: () => new Refusal('reading-clash'),
  settled_entry_pkey: () => new Refusal('stale-moved-on'),
  weighing_first_once: () => new Refusal('stale-moved-on'),
  weighing_superseded_once: () => new Refusal('stale-moved-on'),
  reading_place_taken: () => new Refusal('reading-there'),
  repair_baked_again_once: () => new Refusal('stale-moved-on'),
  repair_day_added_once: () => new Refusal('stale-moved-on'),
  reading_superseded_once: () => new Refusal('stale-moved-on'),
}

export function refusalOfConstraint(constraint: string): Refusal | undefined {
  return refusalByConstraint[constraint]?.()
}
