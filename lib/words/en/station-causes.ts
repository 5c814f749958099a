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
  scaleNext: 'Another scale can be put in its place where a line is weighed.',
  row: 'Dough {code}: {what}',
} as const
