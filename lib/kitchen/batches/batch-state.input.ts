/** Where a batch is on its way, or that it is out. */
export type BatchStateName =
  | 'waiting'
  | 'weighing'
  | 'in_work'
  | 'baked'
  | 'measured'
  | 'lost'
  | 'set_aside'
  | 'not_baked'
