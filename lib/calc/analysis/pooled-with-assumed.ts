import { mustBeWithin } from '../checks'

/** An own variance rests on itself from so many degrees of freedom on; what is assumed counts as so many until then. */
const ENOUGH_DF = 8

export type KnownVariance = {
  variance: number
  df: number
  from: 'own' | 'both' | 'assumed'
}

/**
 * A variance as far as it is known: the own one from 8 degrees of freedom on; below, the two weighted by degrees of
 * freedom, with the assumed one counted as 8; without any, the assumed one.
 * @param own ≥ 0, with its degrees of freedom ≥ 0; @param assumed ≥ 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: variances pooled by degrees of freedom as in the two-sample t test (Student 1908); the weight of what is
 * assumed is common practice, no source.
 */
export function pooledWithAssumed(own: { variance: number; df: number }, assumed: number): KnownVariance {
  const variance = mustBeWithin('own.variance', own.variance, { min: 0 })
  const df = mustBeWithin('own.df', own.df, { min: 0 })
  mustBeWithin('assumed', assumed, { min: 0 })
  if (df === 0) return { variance: assumed, df: ENOUGH_DF, from: 'assumed' }
  if (df >= ENOUGH_DF) return { variance, df, from: 'own' }
  return {
    variance: (df * variance + ENOUGH_DF * assumed) / (df + ENOUGH_DF),
    df: df + ENOUGH_DF,
    from: 'both',
  }
}
