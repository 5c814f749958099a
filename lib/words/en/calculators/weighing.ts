/** Calculations of the subject: their titles, and one name for each field and choice that their forms and answers show. Units come from the field's ending. */
export const weighingWords = {
  subject: 'Weighing',
  titles: {
    'weighing/net-weight-uncertainty': 'How sure a weighing is',
    'weighing/least-net-mass': 'Least mass a scale weighs well enough',
  },
  fields: {
    resolutionG: 'Smallest step of the scale',
    repeatabilityG: 'Spread of repeated readings',
    errorShare: 'Error allowed',
    coverageFactor: 'Coverage factor',
    uncertaintyG: 'Standard uncertainty',
    netMassG: 'Least net mass',
  },
  choices: {},
} as const
