import { CalcError } from '../error'
import { type Alternative, type Comparisons, adjustAgainstControl } from '../analysis/adjust-against-control'
import type { MixedFit } from './fit-mixed-model'

export type DfMethod = 'satterthwaite' | 'kenward-roger'

export type MixedComparisons = Comparisons & { dfMethod: DfMethod }

/**
 * Dunnett's single-step comparison of the arms of a mixed model with its control: the model's own correlation of the
 * differences, and the smallest degrees of freedom of them all, which errs on the side of caution.
 * @param fit from fitMixedModel, of two arms or more; @param confidence joint, 0.5 to 0.9999
 * @param dfMethod whose standard errors and degrees of freedom; Kenward and Roger's allow for few batches
 * @throws CalcError as adjustAgainstControl (df below 0.5 too); 'not-possible': reason 'one-arm', 'variance-at-zero' (of
 * batches: use analyseBatches, on batch means) or 'kenward-roger-undefined'
 * Source: Dunnett (1955), JASA 50; Hothorn, Bretz & Westfall (2008), Biometrical J. 50.
 */
export function compareMixedModelArms(q: {
  fit: MixedFit
  dfMethod: DfMethod
  confidence: number
  alternative: Alternative
}): MixedComparisons {
  const { fit } = q
  const refuse = (reason: string): never => {
    throw new CalcError('not-possible', { field: 'fit', reason })
  }
  if (fit.differences.length === 0) refuse('one-arm')
  if (fit.differenceCovariance.kenwardRoger === null) refuse('variance-at-zero')
  const chosen = fit.differences.map(({ arm, estimate, ...own }) => {
    const inference = q.dfMethod === 'satterthwaite' ? own.satterthwaite : own.kenwardRoger
    return { arm, estimate, ...(inference ?? refuse('kenward-roger-undefined')) }
  })
  const covariance =
    (q.dfMethod === 'satterthwaite' ? fit.differenceCovariance.model : fit.differenceCovariance.kenwardRoger) ??
    refuse('variance-at-zero')
  const size = covariance.map((row, i) => Math.sqrt(row[i]!))
  const comparisons = adjustAgainstControl({
    differences: chosen,
    correlation: covariance.map((row, i) => row.map((value, j) => (i === j ? 1 : value / (size[i]! * size[j]!)))),
    df: chosen.map(({ df }) => Math.min(df, 1e6)),
    confidence: q.confidence,
    alternative: q.alternative,
  })
  return { ...comparisons, dfMethod: q.dfMethod }
}
