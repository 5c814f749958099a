/** What a tablet says of the count of pieces. It goes into the tablet's script. */
export const stationCounts = {
  title: 'Pieces',
  none: 'Not counted yet',
  go: 'Count the pieces',
  of: 'Pieces of dough {code}',
  what: {
    made: 'Made',
    good: 'Good',
    sampled: 'Sampled',
    sold: 'Sold',
    given: 'Given away',
    wasted: 'Wasted',
  },
  said: '{what}: {pieces}',
  unsaid: 'not said',
  byAt: '{who}, {at}',
  left: { one: 'One is still there.', other: '{count} are still there.' },
  all: 'Say at least how many were made and how many of them are good.',
  moreGood: 'More good ones than were made. Put one of them right.',
  moreGone: 'Sampled, sold, given and wasted are more than were made. Put one of them right.',
  forOthers:
    'Whoever gets one is told its allergens, and it wears the label that local rules ask for. Loaves that carry only a code are not for sale, and loaves that were in seed are not eaten.',
  keep: 'Keep the count',
  row: 'Dough {code}, pieces: {said}',
} as const
