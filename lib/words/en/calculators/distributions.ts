/** Calculations of the subject: their titles, and one name for each field and choice that their forms and answers show. Units come from the field's ending. */
export const distributionsWords = {
  subject: 'Distributions',
  titles: {
    // Noncentral kinds and joint probabilities of several comparisons
    'distributions/noncentral-t-tail': 'Tail of the noncentral t',
    'distributions/noncentral-f-tail': 'Tail of the noncentral F',
    'distributions/multivariate-t-tail': 'Several comparisons of any correlation: tail',
    'distributions/multivariate-t-quantile': 'Several comparisons of any correlation: critical value',
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
    c: 'Critical value',
    p: 'Chance beyond it',
    pairs: 'Correlations of the pairs: 1-2, 1-3, …, 2-3, …',
    sides: 'Sides',
    lower: 'Up to it',
    upper: 'Beyond it',
    errorEstimate: 'Error of the probability, at most about',
    method: 'Method',
  },
  choices: {
    lower: 'up to the value',
    upper: 'above the value',
    one: 'one',
    two: 'two',
    'shifted-richtmyer-lattice': 'lattice rule with fixed shifts, without chance',
  },
} as const
