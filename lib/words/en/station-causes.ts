/** What a tablet says where something went wrong with a dough; as `station`, it goes into the tablet's script. */
export const stationCauses = {
  go: 'Something went wrong',
  title: 'What went wrong with dough {code}?',
  back: 'Back to the dough',
  note: 'Note it as it happens: what is noted only after the loaf was read is no reason to leave the dough out. What is noted stays; a slip is put right by noting what is true.',
  /** As they stand in the book. */
  what: {
    dropped: 'It was dropped',
    oven: 'The oven went off',
    lost: 'The dough is lost',
    scale: 'The scale broke',
    lot: 'The lot ran out',
  },
  other: 'Something else',
  keep: 'Note it',
  noted: 'Noted here: {what}, {who}, {at}',
  lost: 'The desk takes a lost dough out. While its trial is open it can bake the dough again, last in its mixing day and under a code of its own, and where the day is short of a dough it can add a whole mixing day; no new approval is asked. Read nothing more of this dough.',
  scaleNext: 'Another scale can be put in its place where a line is weighed.',
  row: 'Dough {code}: {what}',
} as const
