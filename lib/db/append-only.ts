/**
 * Tables that only ever grow. The app's role may not update, delete or truncate them, and triggers refuse it to
 * everybody; a database test checks both for each name here.
 */
export const appendOnlyTables = [
  'audit_entry',
  'price',
  'signature',
  'plan_decision',
  'trial_author',
  'reading',
  'entry_to_settle',
  'settled_entry',
  'batch_cause',
  'weighing',
  'weighing_lot',
  'step',
  'note',
  'note_reader',
  'found_cause',
  'found_cause_signature',
  'repair',
  'evidence',
  'evidence_part',
  'closing',
  'amendment',
  'amendment_verdict',
  'slip_signature',
  'opened_key',
  'opened_dough_key',
  'look',
  'answered_form',
] as const
