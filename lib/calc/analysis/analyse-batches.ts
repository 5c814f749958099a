import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { type Alternative, type Comparisons, adjustAgainstControl } from './adjust-against-control'
import { type BatchMean, type LoafReading, batchMeans } from './batch-means'
import { type AdditiveFit, fitAdditive } from './fit-additive'
import { type LoafVariation, loafVariation } from './loaf-variation'

export type BatchAnalysis = {
  method: {
    unit: 'batch-means'
    scale: 'plain' | 'log'
    model: AdditiveFit['method']['model']
    adjustment: Comparisons['method']
  }
  batches: BatchMean[]
  /** On the declared scale: `log` holds natural logarithms of batch means. */
  fit: AdditiveFit
  comparisons: Comparisons
  /** 100 (exp(difference) − 1), on the log scale only. */
  pctComparisons: { arm: string; pct: number; lowPct: number | null; highPct: number | null }[] | null
  /** Between loaves of one batch, in the measure's unit; null without repeated loaves. Informs, never lends df. */
  loafVariation: LoafVariation | null
  warnings: ('no-blocks' | 'unequal-loaves')[]
}

/**
 * A trial of arms against a control, on batch means: fixed effects of arm and, where given, block, by least squares;
 * Dunnett's adjustment with the model's own correlation; simultaneous intervals.
 * @param readings as in batchMeans; `block` on all or on none
 * @param arms the control first, at least two
 * @param confidence joint confidence of the intervals, 0.5 to 0.9999
 * @param scale `log` when effects were declared in %: natural logarithms of batch means, values > 0
 * @throws CalcError as batchMeans and fitAdditive; 'not-possible' with reason 'one-batch-in-arm' (show as a look only),
 * 'arm-confounded-with-block', 'no-residual-df', 'zero-variance'
 * Source: Cochran & Cox (1957), chapters 3 and 4; Dunnett (1955).
 */
export function analyseBatches(q: {
  readings: readonly LoafReading[]
  arms: readonly string[]
  confidence: number
  alternative: Alternative
  scale: 'plain' | 'log'
}): BatchAnalysis {
  const batches = batchMeans(q.readings)
  for (const arm of q.arms) {
    if (batches.filter((batch) => batch.arm === arm).length === 1) {
      throw new CalcError('not-possible', { field: 'readings', value: arm, reason: 'one-batch-in-arm' })
    }
  }
  const rows = batches.map(({ arm, block, mean, batch }) => {
    if (q.scale === 'log') mustBeWithin(`batches[${batch}].mean`, mean, { over: 0 })
    return { arm, ...(block === undefined ? {} : { block }), y: q.scale === 'log' ? Math.log(mean) : mean }
  })
  const fit = fitAdditive({ rows, arms: q.arms, confidence: q.confidence })
  const comparisons = adjustAgainstControl({
    differences: fit.differences,
    correlation: fit.differenceCorrelation,
    df: fit.residualDf,
    confidence: q.confidence,
    alternative: q.alternative,
  })
  const pct = (log: number) => 100 * Math.expm1(log)
  const pctComparisons =
    q.scale === 'plain'
      ? null
      : comparisons.comparisons.map(({ arm, estimate, low, high }) => ({
          arm,
          pct: pct(estimate),
          lowPct: low === null ? null : pct(low),
          highPct: high === null ? null : pct(high),
        }))
  const warnings: BatchAnalysis['warnings'] = []
  if (fit.method.model === 'arm') warnings.push('no-blocks')
  if (new Set(batches.map((batch) => batch.loafCount)).size > 1) warnings.push('unequal-loaves')
  return {
    method: { unit: 'batch-means', scale: q.scale, model: fit.method.model, adjustment: comparisons.method },
    batches,
    fit,
    comparisons,
    pctComparisons,
    loafVariation: loafVariation(batches, q.confidence),
    warnings,
  }
}
