import 'server-only'
import { CalcError } from '../../calc/error'
import { gainPower } from '../../calc/plan/gain-power'
import type { PlanDeclared, PlanPower } from './plan-types'

/** Spread of batch means and of loaves in a batch until the bakery has its own, % of the mean. A guess, from memory. */
const guessedBatchCvPct = 3
const guessedLoafCvPct = 2.5

const runs = 4000
/** The same for every plan, so that a plan looked at twice says the same. */
const seed = 'power'
/** True differences tried, in smallest differences worth having: at one, half of all trials fall short of it. */
const timesTheMargin = [1, 1.5, 2]

/** The chance of the verdict 'better' when every arm truly gains so much, by simulation of the very rule. */
export function powerOfPlan(
  declared: Pick<
    PlanDeclared,
    'kind' | 'marginUnit' | 'margin' | 'confidencePct' | 'mixingDays' | 'batchesPerArm' | 'piecesPerBatch' | 'measure'
  >,
  armCount: number,
): PlanPower {
  const { measure } = declared
  if (declared.kind !== 'gain' || armCount === 0) return { outcome: 'not-gain' }
  if (measure.direction === 'none') return { outcome: 'no-direction' }
  if (declared.mixingDays * declared.batchesPerArm === 1) return { outcome: 'one-batch' }
  // Without the bakery's own mean a margin in units cannot be set against a spread in per cent.
  if (declared.marginUnit !== 'pct') return { outcome: 'margin-in-units' }
  const sign = measure.direction === 'larger' ? 1 : -1
  try {
    const results = timesTheMargin.map((times) => {
      const truePct = times * declared.margin
      const power = gainPower({
        seed,
        runs,
        design: {
          layout: 'complete-blocks',
          blocks: declared.mixingDays,
          armBatchesPerBlock: declared.batchesPerArm,
          controlBatchesPerBlock: declared.batchesPerArm,
          loavesPerBatch: declared.piecesPerBatch,
        },
        spread: { blockSd: 0, batchSd: guessedBatchCvPct, loafSd: measure.level === 'piece' ? guessedLoafCvPct : 0 },
        trueDifferences: Array.from({ length: armCount }, () => sign * truePct),
        worthwhile: declared.margin,
        goodDirection: measure.direction === 'larger' ? 'larger' : 'smaller',
        confidence: declared.confidencePct / 100,
      })
      return {
        residualDf: power.residualDf,
        row: { truePct, powerShare: power.arms[0]?.power ?? 0, powerSe: power.arms[0]?.powerSe ?? 0 },
      }
    })
    return {
      outcome: 'simulated',
      runs,
      residualDf: results[0]?.residualDf ?? 0,
      batchCvPct: guessedBatchCvPct,
      loafCvPct: guessedLoafCvPct,
      rows: results.map(({ row }) => row),
    }
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'no-residual-df') return { outcome: 'no-degrees' }
    throw error
  }
}
