/** Calculations of the subject: their titles, and one name for each field and choice that their forms and answers show. Units come from the field's ending. */
export const stalingWords = {
  subject: 'Staling',
  titles: {
    'staling/firmness-at': 'Firmness after some days',
    'staling/half-life': 'Days to half of the firming',
    'staling/fit-firmness': 'Speed of firming from readings',
  },
  fields: {
    startFirmness: 'Firmness when fresh',
    startStandardError: 'Standard error of the firmness when fresh',
    endFirmness: 'Firmness in the end',
    endStandardError: 'Standard error of the firmness in the end',
    ratePerDay: 'Rate a day, at one storage temperature',
    rateStandardError: 'Standard error of the rate',
    days: 'Days after baking',
    firmness: 'Firmness',
    halfLifeDays: 'Half of what is to come is done after',
    readings: 'Readings, all stored at one temperature',
    residualSumSquares: 'Sum of squares left over',
    residualSd: 'Spread of readings about the curve',
    residualDf: 'Degrees of freedom',
    warnings: 'Mind',
  },
  choices: {
    'end-not-seen': 'The readings stop too early to show where firming ends: the end is a guess',
  },
} as const
