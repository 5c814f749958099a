import { mustBeWhole, mustBeWithin, mustHaveAtLeast } from '../checks'
import { fQuantile } from '../distributions/f-quantile'
import { noncentralFTail } from '../distributions/noncentral-f-tail'
import { CalcError } from '../error'

export type SeveralArms = { means: readonly number[]; sd: number; alpha: number }

export type AnovaPower = { power: number; df1: number; df2: number; noncentrality: number; effectSize: number }

/**
 * Chance that the F test of a one-way analysis of variance sees that several arms differ at all.
 * @param countPerArm doughs of each arm, 2 to 10,000; @param means true means, 2 to 100 arms
 * @param sd common spread between doughs, > 0; @param alpha chance of a false alarm, 1e-6 to 0.5
 * @returns power 0 to 1, degrees of freedom, noncentrality λ, effect size f (spread of the true means over sd)
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty'; with reason 'far-beyond-spread' for λ above 10,000
 * Source: noncentral F with λ = n Σ(μᵢ − μ̄)² / σ²; f of Cohen (1988), Statistical Power Analysis, chapter 8.
 * @example anovaPower({ countPerArm: 5, means: [-1.2247, 0, 0, 1.2247], sd: 1.7321, alpha: 0.05 }).power // 0.3536
 */
export function anovaPower(q: SeveralArms & { countPerArm: number }): AnovaPower {
  mustBeWhole('countPerArm', q.countPerArm, { min: 2, max: 10_000 })
  return anovaPowerAt(q)
}

/** The same for any number above 1, for a search. */
export function anovaPowerAt(q: SeveralArms & { countPerArm: number }): AnovaPower {
  const alpha = mustBeWithin('alpha', q.alpha, { min: 1e-6, max: 0.5 })
  const sd = mustBeWithin('sd', q.sd, { over: 0 })
  const arms = mustBeWithin('means.length', mustHaveAtLeast('means', q.means, 2).length, { max: 100 })
  const mean = q.means.reduce((sum, each, i) => sum + mustBeWithin(`means[${i}]`, each), 0) / arms
  const effectSize = Math.sqrt(q.means.reduce((sum, each) => sum + ((each - mean) / sd) ** 2, 0) / arms)
  const noncentrality = q.countPerArm * arms * effectSize ** 2
  if (!(noncentrality <= 1e4))
    throw new CalcError('out-of-range', { field: 'means', value: noncentrality, max: 1e4, reason: 'far-beyond-spread' })
  const [df1, df2] = [arms - 1, arms * (q.countPerArm - 1)]
  const f = fQuantile({ p: alpha, df1, df2, tail: 'upper' })
  return { power: noncentralFTail({ f, df1, df2, noncentrality, tail: 'upper' }), df1, df2, noncentrality, effectSize }
}
