import 'server-only'
import { pooledWithAssumed } from '../../calc/analysis/pooled-with-assumed'
import { CalcError } from '../../calc/error'
import { armDayPower } from '../../calc/plan/arm-day-power'
import { guessedSpread } from './guessed-spread'
import type { ArmByDay, OwnSpread, PlanDeclared, PlanPower } from './plan-types'

const runs = 4000
/** The same for every plan, so that a plan looked at twice says the same. */
const seed = 'power'
/** True differences tried, in smallest differences worth having: at one, half of all trials fall short of it. */
const timesTheMargin = [1, 1.5, 2]
/** Below this chance at the middle one of them a plan is told what would raise it: common practice, no source. */
const lowChance = 0.8
/** As many as a plan may have. */
const mostDays = 30
/** As many as are simulated. */
const mostDoughs = 20

type Declared = Pick<
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
>

/**
 * The chance of the verdict 'better' when every arm truly gains so much, by simulation of the very rule. What the gain
 * is on other mixing days than those baked is part of it, unless the verdict is declared to be said of these days only.
 * @param own what closed trials of the formula say of how much a difference changes by day
 */
export function powerOfPlan(declared: Declared, armCount: number, own: OwnSpread): PlanPower {
  const { measure } = declared
  if (declared.kind !== 'gain' || armCount === 0) return { outcome: 'not-gain' }
  if (measure.direction === 'none') return { outcome: 'no-direction' }
  if (declared.mixingDays * declared.batchesPerArm === 1) return { outcome: 'one-batch' }
  // Without the bakery's own mean a margin in units cannot be set against a spread in per cent.
  if (declared.marginUnit !== 'pct') return { outcome: 'margin-in-units' }
  const shares = timesTheMargin
    .map((times) => (times * declared.margin) / 100)
    .filter((share) => measure.direction === 'larger' || share < 1)
  const armByDay = declared.holdsFor === 'these_days' ? null : armByDayOf(own)
  const chanceOf = (share: number, size: Size) => simulated(declared, armCount, armByDay, share, size)
  try {
    const results = shares.map((share) => ({ share, power: chanceOf(share, declared) }))
    return {
      outcome: 'simulated',
      runs,
      residualDf: results[0]?.power.residualDf ?? 0,
      batchCvPct: guessedSpread.batchCvPct,
      loafCvPct: guessedSpread.loafCvPct,
      armByDay,
      rows: results.map(({ share, power: { powerShare, powerSe } }) => ({ truePct: 100 * share, powerShare, powerSe })),
      otherwise: otherwiseOf(declared, results.at(1), chanceOf),
    }
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'no-residual-df') return { outcome: 'no-degrees' }
    throw error
  }
}

type Size = Pick<Declared, 'mixingDays' | 'batchesPerArm'>
type Chance = { residualDf: number; powerShare: number; powerSe: number }

function simulated(
  declared: Declared,
  armCount: number,
  armByDay: ArmByDay | null,
  share: number,
  { mixingDays, batchesPerArm }: Size,
): Chance {
  const isLarger = declared.measure.direction === 'larger'
  const margin = declared.margin / 100
  const power = armDayPower({
    seed,
    runs,
    days: mixingDays,
    doughs: batchesPerArm,
    loaves: declared.piecesPerBatch,
    unit: declared.holdsFor === 'these_days' ? 'doughs' : 'arm-days',
    spread: {
      armByDaySd: (armByDay?.cvPct ?? 0) / 100,
      doughSd: guessedSpread.batchCvPct / 100,
      loafSd: declared.measure.level === 'piece' ? guessedSpread.loafCvPct / 100 : 0,
    },
    // A difference in % is judged as a ratio, on logarithms; a loss of all of it has none.
    trueDifferences: Array.from({ length: armCount }, () => (isLarger ? Math.log1p(share) : Math.log1p(-share))),
    margin: { more: Math.log1p(margin), less: -Math.log1p(-margin) },
    goodDirection: isLarger ? 'larger' : 'smaller',
    confidence: declared.confidencePct / 100,
  })
  const [arm] = power.arms
  return { residualDf: power.residualDf, powerShare: arm?.power ?? 0, powerSe: arm?.powerSe ?? 0 }
}

function armByDayOf({ sd, df, trials }: OwnSpread): ArmByDay {
  const assumedCvPct = guessedSpread.armByDayCvPct
  const { variance, from } = pooledWithAssumed({ variance: sd ** 2, df }, (assumedCvPct / 100) ** 2)
  return { cvPct: 100 * Math.sqrt(variance), from, assumedCvPct, ownDf: df, trials }
}

/** Only where the chance is low, and more mixing days bring more of it than more doughs on each. */
function otherwiseOf(
  { holdsFor, mixingDays, batchesPerArm }: Declared,
  now: { share: number; power: Chance } | undefined,
  chanceOf: (share: number, size: Size) => Chance,
): Extract<PlanPower, { outcome: 'simulated' }>['otherwise'] {
  if (holdsFor === 'these_days' || !now || now.power.powerShare >= lowChance || mixingDays === mostDays) return null
  const more = {
    mixingDays: Math.min(2 * mixingDays, mostDays),
    batchesPerArm: Math.min(2 * batchesPerArm, mostDoughs),
  }
  const daysPowerShare = chanceOf(now.share, { mixingDays: more.mixingDays, batchesPerArm }).powerShare
  const doughsPowerShare = chanceOf(now.share, { mixingDays, batchesPerArm: more.batchesPerArm }).powerShare
  if (daysPowerShare <= doughsPowerShare) return null
  return { truePct: 100 * now.share, ...more, daysPowerShare, doughsPowerShare }
}
