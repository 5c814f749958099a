/** What a tablet says of water that is held back or added while a dough is mixed; it goes into the tablet's script. */
export const stationHeld = {
  go: 'Water held back or added',
  ways: { heldBack: 'Water held back', added: 'Water added' },
  title: { heldBack: 'Water held back from dough {code}', added: 'Water added to dough {code}' },
  ask: {
    heldBack: 'How much of the water that was weighed stays out of the dough?',
    added: 'How much water went in on top of what was weighed?',
  },
  before: 'In the dough so far: {mass}',
  then: 'Then in the dough: {mass}',
  planned: 'By the plan: {mass}',
  off: 'That is further from the plan than the doughs may differ. It is kept, and the result says so.',
  allHeld: 'Only {mass} of it is in the dough, and some has to stay.',
  tooMuch: 'That is more than the whole water of this dough, {mass}. Is it the right unit?',
  keep: { heldBack: 'Keep: {mass} held back', added: 'Keep: {mass} added' },
  keepNothing: 'Keep',
  /** What stands with it in the book. */
  reason: { heldBack: 'Held back while mixing: {mass}', added: 'Added while mixing: {mass}' },
  back: 'Back to the line',
} as const
