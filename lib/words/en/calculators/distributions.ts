/** Calculations of the subject: their titles, and one name for each field and choice that their forms and answers show. Units come from the field's ending. */
export const distributionsWords = {
  subject: 'Distributions',
  titles: {
    // Noncentral kinds and joint probabilities of several comparisons
    'distributions/noncentral-t-tail': 'Tail of the noncentral t',
    'distributions/noncentral-f-tail': 'Tail of the noncentral F',
  },
  fields: {
    // Noncentral kinds and joint probabilities of several comparisons
    t: 't',
    f: 'F',
    df: 'Degrees of freedom',
    df1: 'Degrees of freedom, numerator',
    df2: 'Degrees of freedom, denominator',
    noncentrality: 'Noncentrality',
    tail: 'Side',
    probability: 'Probability',
  },
  choices: {
    lower: 'up to the value',
    upper: 'above the value',
  },
} as const
