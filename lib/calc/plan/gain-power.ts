import { type GainVerdict, type GoodDirection, gainVerdict } from '../analysis/gain-verdict'
import { mustBeWhole, mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { dunnettLoadings } from '../distributions/dunnett-loadings'
import { dunnettQuantile } from '../distributions/dunnett-quantile'
import { chiSquaredDeviate } from '../random/chi-squared-deviate'
import { normalDeviate } from '../random/normal-deviate'
import { seededRandom } from '../random/seeded-random'

export type TrialDesign = {
  /** `complete-blocks`: every block holds every arm. `no-blocks`: every batch on its own, days count as batch spread. */
  layout: 'complete-blocks' | 'no-blocks'
  blocks: number
  /** Batches of each test arm in a block; without blocks the same times `blocks` in all. */
  armBatchesPerBlock: number
  controlBatchesPerBlock: number
  loavesPerBatch: number
}

export type Spread = { blockSd: number; batchSd: number; loafSd: number }

export type GainPower = {
  method: 'simulated-verdicts'
  runs: number
  residualDf: number
  criticalValue: number
  /** Standard error of a difference from the control that the spread gives. */
  differenceSe: number
  arms: {
    trueDifference: number
    /** Share of runs with each verdict; `clearly` is the share of all runs that were clearly better. */
    share: Record<GainVerdict['verdict'] | 'clearly', number>
    /** Chance of 'better' and its Monte Carlo standard error, at least that of one run in `runs`. */
    power: number
    powerSe: number
  }[]
}

/**
 * Chance of each verdict of gainVerdict, by simulation of the trial's batch means with the design's own degrees of
 * freedom, Dunnett's critical value and the stated spread. Arm means and residual variance are drawn from their exact
 * joint distribution in a whole design, which is the same as drawing and analysing every loaf, only faster.
 * In complete blocks the block spread cancels; without blocks it is part of every batch.
 * @param design whole numbers: blocks 1 to 100, batches 1 to 20, loaves 1 to 1000
 * @param spread SDs ≥ 0 in the measure's unit, batch or loaf > 0
 * @param trueDifferences arm minus control, one per test arm, 1 to 12
 * @param worthwhile > 0; @param confidence joint, 0.5 to 0.9999; @param runs 100 to 1e6
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty'; 'not-possible' with reason 'no-residual-df'
 * Source: normal theory of the additive model (Searle 1971); rule as in gainVerdict.
 */
export function gainPower(q: {
  seed: string
  runs: number
  design: TrialDesign
  spread: Spread
  trueDifferences: readonly number[]
  worthwhile: number
  goodDirection: GoodDirection
  confidence: number
}): GainPower {
  const { design, spread } = q
  const runs = mustBeWhole('runs', q.runs, { min: 100, max: 1e6 })
  const blocks = mustBeWhole('design.blocks', design.blocks, { min: 1, max: 100 })
  const armBatches = blocks * mustBeWhole('design.armBatchesPerBlock', design.armBatchesPerBlock, { min: 1, max: 20 })
  const controlBatches =
    blocks * mustBeWhole('design.controlBatchesPerBlock', design.controlBatchesPerBlock, { min: 1, max: 20 })
  const loaves = mustBeWhole('design.loavesPerBatch', design.loavesPerBatch, { min: 1, max: 1000 })
  mustHaveAtLeast('trueDifferences', q.trueDifferences, 1)
  const k = mustBeWithin('trueDifferences.length', q.trueDifferences.length, { max: 12 })
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })

  const blockVariance = mustBeWithin('spread.blockSd', spread.blockSd, { min: 0 }) ** 2
  const own =
    mustBeWithin('spread.batchSd', spread.batchSd, { min: 0 }) ** 2 +
    mustBeWithin('spread.loafSd', spread.loafSd, { min: 0 }) ** 2 / loaves
  mustBeWithin('spread.batchSd + spread.loafSd', own, { over: 0 })
  const sd = Math.sqrt(design.layout === 'complete-blocks' ? own : own + blockVariance)

  const lost = design.layout === 'complete-blocks' ? blocks + k : 1 + k
  const residualDf = k * armBatches + controlBatches - lost
  if (residualDf < 1)
    throw new CalcError('not-possible', { field: 'design', value: residualDf, reason: 'no-residual-df' })
  const loadings = dunnettLoadings({ controlCount: controlBatches, armCounts: q.trueDifferences.map(() => armBatches) })
  const criticalValue = dunnettQuantile({ p: 1 - q.confidence, df: residualDf, loadings, sides: 'two' })

  const perSd = Math.sqrt(1 / armBatches + 1 / controlBatches)
  const counts = q.trueDifferences.map(() => ({
    better: 0,
    worse: 0,
    'no-worthwhile-difference': 0,
    undecided: 0,
    clearly: 0,
  }))
  const random = seededRandom(q.seed)
  for (let run = 0; run < runs; run++) {
    const control = (sd * normalDeviate(random)) / Math.sqrt(controlBatches)
    const means = q.trueDifferences.map(
      (difference) => difference + (sd * normalDeviate(random)) / Math.sqrt(armBatches),
    )
    const half = criticalValue * sd * Math.sqrt(chiSquaredDeviate(random, residualDf) / residualDf) * perSd
    means.forEach((mean, i) => {
      const estimate = mean - control
      const got = gainVerdict({
        estimate,
        low: estimate - half,
        high: estimate + half,
        worthwhile: q.worthwhile,
        goodDirection: q.goodDirection,
      })
      if (got === null) return
      counts[i]![got.verdict] += 1
      if (got.clearly && got.verdict === 'better') counts[i]!.clearly += 1
    })
  }
  return {
    method: 'simulated-verdicts',
    runs,
    residualDf,
    criticalValue,
    differenceSe: sd * perSd,
    arms: q.trueDifferences.map((trueDifference, i) => {
      const count = counts[i]!
      const share = {
        better: count.better / runs,
        worse: count.worse / runs,
        'no-worthwhile-difference': count['no-worthwhile-difference'] / runs,
        undecided: count.undecided / runs,
        clearly: count.clearly / runs,
      }
      const inside = Math.min(1 - 1 / runs, Math.max(1 / runs, share.better))
      return { trueDifference, share, power: share.better, powerSe: Math.sqrt((inside * (1 - inside)) / runs) }
    }),
  }
}
