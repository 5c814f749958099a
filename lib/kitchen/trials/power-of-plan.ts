import 'server-only'
import { CalcError } from '../../calc/error'
import { armDayPower } from '../../calc/plan/arm-day-power'
import type { PlanDeclared, PlanPower } from './plan-types'

/** Spread of batch means and of loaves in a batch until the bakery has its own, % of the mean. A guess, from memory. */
const guessedBatchCvPct = 3
const guessedLoafCvPct = 2.5

const runs = 4000
/** The same for every plan, so that a plan looked at twice says the same. */
const seed = 'power'
/** True differences tried, in smallest differences worth having: at one, half of all trials fall short of it. */
const timesTheMargin = [1, 1.5, 2]

/**
 * The chance of the verdict 'better' when every arm truly gains so much, by simulation of the very rule, as if the gain
 * were the same on every mixing day: how much it is not, nobody knows beforehand.
 */
export function powerOfPlan(
  declared: Pick<
    PlanDeclared,
    | 'kind'
    | 'marginUnit'
    | 'margin'
    | 'confidencePct'
    | 'holdsFor'
    | 'mixingDays'
    | 'batchesPerArm'
    | 'piecesPerBatch'
    | 'measure'
  >,
  armCount: number,
): PlanPower {
  const { measure } = declared
  if (declared.kind !== 'gain' || armCount === 0) return { outcome: 'not-gain' }
  if (measure.direction === 'none') return { outcome: 'no-direction' }
  if (declared.mixingDays * declared.batchesPerArm === 1) return { outcome: 'one-batch' }
  // Without the bakery's own mean a margin in units cannot be set against a spread in per cent.
  if (declared.marginUnit !== 'pct') return { outcome: 'margin-in-units' }
  const isLarger = measure.direction === 'larger'
  const margin = declared.margin / 100
  // A difference in % is judged as a ratio, on logarithms; a loss of all of it has none.
  const onLogs = (share: number) => (isLarger ? Math.log1p(share) : Math.log1p(-share))
  const shares = timesTheMargin.map((times) => times * margin).filter((share) => isLarger || share < 1)
  try {
    const results = shares.map((share) => {
      const power = armDayPower({
        seed,
        runs,
        days: declared.mixingDays,
        doughs: declared.batchesPerArm,
        loaves: declared.piecesPerBatch,
        unit: declared.holdsFor === 'these_days' ? 'doughs' : 'arm-days',
        spread: {
          armByDaySd: 0,
          doughSd: guessedBatchCvPct / 100,
          loafSd: measure.level === 'piece' ? guessedLoafCvPct / 100 : 0,
        },
        trueDifferences: Array.from({ length: armCount }, () => onLogs(share)),
        margin: { more: Math.log1p(margin), less: -Math.log1p(-margin) },
        goodDirection: isLarger ? 'larger' : 'smaller',
        confidence: declared.confidencePct / 100,
      })
      const [arm] = power.arms
      return {
        residualDf: power.residualDf,
        row: { truePct: 100 * share, powerShare: arm?.power ?? 0, powerSe: arm?.powerSe ?? 0 },
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
