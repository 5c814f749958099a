/** What a tablet says of a dough that is taken out, and of what can be done then; as `station`, it goes into the tablet's script. */
export const stationRepairs = {
  takeOut: {
    title: 'Take it out of the trial',
    note: 'A lost dough cannot be baked on. One that is set aside is kept out of the comparison. Neither comes back, but for ten seconds. What can be done then is offered at once.',
    lost: 'It is lost: take it out',
    aside: 'Set it aside',
    offline: 'A dough is taken out in the book, so this needs the network. The desk can do it too.',
    unsent:
      'What was noted or read of it here is not all in the book yet, and goes before. It is sent by itself once the book answers.',
    unknown: 'The book does not answer, so it is not certain that the dough is out. Tap again once it answers.',
    back: 'Take it back: it is not out',
  },
  out: {
    title: 'Dough {code}: {state}',
    list: 'Out',
    offline: 'Only the book can give out a code and a place for it, so this needs the network. The desk can do it too.',
    unknown:
      'The book does not answer, so it is not certain that it is baked again. Nothing is lost: tap again once the book answers, and one dough is made.',
    addDay: 'The head baker can add a whole mixing day instead, at the desk.',
  },
  exchange: {
    after: 'Then: {codes}',
    go: 'Exchange places',
    goOf: 'Exchange places, trial {number}',
    title: 'Which two exchange their places?',
    back: 'All doughs',
    note: 'Both doughs wait on this mixing day. The drawn order stays known, and the result says what was kept.',
    row: 'Dough {code}, place {place}',
    why: 'Why?',
    whyNote: 'It is kept in the record, so write nothing that tells what is in it.',
    reasons: {
      tins: 'The tins are in use',
      mixer: 'The mixer is not free',
      oven: 'The oven is not free',
      late: 'Something comes later today',
    },
    other: 'Another reason',
    keep: 'Exchange them',
    two: 'Tap two doughs first.',
    offline: 'The order is in the book, so this needs the network. The desk can do it too.',
    unknown:
      'The book does not answer, so it is not certain that they changed places. Tap the same again once the book answers: they change once.',
  },
} as const
