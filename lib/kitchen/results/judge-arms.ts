import 'server-only'
import type { Comparisons } from '../../calc/analysis/adjust-against-control'
import { countArmDays, type DoughRow } from '../../calc/analysis/count-arm-days'
import { fitArmDays } from '../../calc/analysis/fit-arm-days'
import {
  type ArmDayJudgement,
  type ArmDayQuestion,
  type ArmDayVerdict,
  judgeArmDays,
} from '../../calc/analysis/judge-arm-days'
import { judgeLogRatios } from '../../calc/analysis/judge-log-ratios'
import { ratioInBlocks } from '../../calc/analysis/ratio-in-blocks'
import { type LimitsCase, whereLimitsLie } from '../../calc/analysis/where-limits-lie'
import { hasTrueZero } from '../stores/has-true-zero'
import { sureOf } from '../sure-of'
import type { CountedBatch } from './count-batches'
import type { DeclaredTrial } from './trial-facts'

/** Arm less control, in the measure's unit and in % of the control; the verdict rests on the one declared. */
export type Effect = {
  estimate: number
  /** Null where there is no interval, and where the verdict rests on %. */
  low: number | null
  high: number | null
  /** Null for a measure without a true zero, and where the control's mean is not clear of it. */
  pct: number | null
  lowPct: number | null
  highPct: number | null
  /** Adjusted for all arms compared: of no difference; for 'no worse' and 'same' of one that reaches the margin. */
  p: number | null
  /** By its own mixing days alone, in what the margin is declared in; null where there is none. */
  own: { days: number; low: number | null; high: number | null } | null
}

export type Verdict = { verdict: ArmDayVerdict; clearly: boolean }

export type ArmJudged = {
  effect: Effect
  verdict: Verdict | null
  /** Where the limits lie; null without an interval. For a measure without a direction, more counts as a gain. */
  lies: LimitsCase | null
}

export type Method = {
  /** `units`: differences in the measure's unit. `log-ratio`: ratios, by logarithms of doughs. */
  scale: 'units' | 'log-ratio'
  adjustment: Comparisons['method']
  /** `one-sided-pair`: each limit one-sided at the declared confidence, as 'no worse' and 'same' ask for. */
  limits: 'two-sided' | 'one-sided-pair'
  df: number
  /** Of one dough about its arm and day: in the measure's unit, or in % on logarithms. */
  doughSd: number
}

export type ArmsJudged = {
  /** By position, days that count at equal weight; of those compared. */
  means: ReadonlyMap<number, number>
  arms: ReadonlyMap<number, ArmJudged>
  /** Positions without a dough on a day that counts. */
  leftOut: number[]
  noInterval: ArmDayJudgement['noInterval']
  /** Null where there is no interval. */
  method: Method | null
}

/**
 * Every arm against the control by the declared rule, on its mean of each mixing day, or for these days only on its
 * doughs. A margin in % is judged as a
 * ratio, on logarithms; one in the measure's unit in that unit, with the plain ratio of means beside it, which decides
 * nothing.
 * @param counted doughs of days that count, of the control and of one other arm at least
 * @throws CalcError as judgeArmDays and judgeLogRatios
 */
export function judgeArms(declared: DeclaredTrial, counted: readonly CountedBatch[]): ArmsJudged {
  const common = {
    rows: counted.map(({ batch, mean }) => ({ arm: String(batch.arm), block: String(batch.day), y: mean })),
    arms: declared.arms.map(({ position }) => String(position)),
    confidence: declared.confidencePct / 100,
    question: questionOf(declared),
    goodDirection: goodDirectionOf(declared),
    unit: declared.holdsFor === 'these_days' ? 'doughs' : 'arm-days',
    correlation: 'model',
  } as const
  return declared.marginUnit === 'pct' ? inPct(declared, common) : inUnits(declared, common)
}

type Asked = Omit<Parameters<typeof judgeArmDays>[0], 'margin'> & { rows: readonly DoughRow[] }

function inUnits(declared: DeclaredTrial, asked: Asked): ArmsJudged {
  const { margin } = declared
  const judged = judgeArmDays({ ...asked, margin: { more: margin, less: margin } })
  const ratios = hasTrueZero(declared.measure) ? ratioInBlocks(asked).comparisons : []
  const arms = judged.comparisons.map((one): [number, ArmJudged] => {
    const beside = ratios.find(({ arm }) => arm === one.arm)
    const isInterval = beside?.set === 'interval'
    const [low, high] = [one.low ?? one.otherLimit, one.high ?? one.otherLimit]
    return [
      Number(one.arm),
      {
        effect: {
          estimate: one.estimate,
          low,
          high,
          pct: asPct(beside?.ratio ?? null),
          lowPct: isInterval ? asPct(beside.low) : null,
          highPct: isInterval ? asPct(beside.high) : null,
          p: one.pAdjusted,
          own: one.own && { days: one.own.days, low: one.own.low, high: one.own.high },
        },
        verdict: verdictOf(declared, one),
        lies: liesOf(declared, low, high),
      },
    ]
  })
  return {
    means: meansOf(judged),
    arms: new Map(arms),
    leftOut: judged.leftOut.map(Number),
    noInterval: judged.noInterval,
    method: methodOf('units', asked.question, judged),
  }
}

function inPct(declared: DeclaredTrial, asked: Asked): ArmsJudged {
  const judged = judgeLogRatios({ ...asked, marginPct: declared.margin })
  const counted = countArmDays(asked)
  const plain = fitArmDays(counted, asked)
  const arms = judged.comparisons.map((one, i): [number, ArmJudged] => {
    const [lowPct, highPct] = [asPct(one.low ?? one.otherLimit), asPct(one.high ?? one.otherLimit)]
    return [
      Number(one.arm),
      {
        effect: {
          estimate: sureOf(plain.differences[i], 'the difference of an arm'),
          low: null,
          high: null,
          pct: asPct(one.ratio),
          lowPct,
          highPct,
          p: one.pAdjusted,
          own: one.own && { days: one.own.days, low: asPct(one.own.low), high: asPct(one.own.high) },
        },
        verdict: verdictOf(declared, one),
        lies: liesOf(declared, lowPct, highPct),
      },
    ]
  })
  return {
    means: new Map(counted.arms.map((arm, i) => [Number(arm), sureOf(plain.means[i], 'the mean of an arm')])),
    arms: new Map(arms),
    leftOut: judged.leftOut.map(Number),
    noInterval: judged.noInterval,
    method: methodOf('log-ratio', asked.question, judged),
  }
}

/** *Which dose* judges each dose as a gain; *a look only* is one without a verdict. */
function questionOf({ kind }: Pick<DeclaredTrial, 'kind'>): ArmDayQuestion {
  switch (kind) {
    case 'no_worse':
      return 'no-worse'
    case 'same_as':
      return 'same'
    case 'gain':
    case 'which_dose':
    case 'look_only':
      return 'gain'
    default:
      return kind satisfies never
  }
}

function goodDirectionOf({ kind, measure }: Pick<DeclaredTrial, 'kind' | 'measure'>) {
  return kind === 'look_only' || measure.direction === 'none' ? null : measure.direction
}

function verdictOf(
  { kind }: DeclaredTrial,
  { verdict, clearly }: { verdict: ArmDayVerdict | null; clearly: boolean },
): Verdict | null {
  return verdict === null || kind === 'look_only' ? null : { verdict, clearly }
}

function liesOf({ margin, measure }: DeclaredTrial, low: number | null, high: number | null): LimitsCase | null {
  if (low === null || high === null) return null
  return whereLimitsLie({
    low,
    high,
    gain: margin,
    loss: margin,
    goodDirection: measure.direction === 'none' ? 'larger' : measure.direction,
  })
}

function methodOf(
  scale: Method['scale'],
  question: ArmDayQuestion,
  { meanSquare, adjustment, df }: Pick<ArmDayJudgement, 'meanSquare' | 'adjustment' | 'df'>,
): Method | null {
  if (adjustment === null || meanSquare === null) return null
  const sd = Math.sqrt(meanSquare)
  return {
    scale,
    adjustment,
    limits: question === 'gain' ? 'two-sided' : 'one-sided-pair',
    df,
    doughSd: scale === 'units' ? sd : 100 * sd,
  }
}

function meansOf({ means }: Pick<ArmDayJudgement, 'means'>): Map<number, number> {
  return new Map(means.map(({ arm, mean }) => [Number(arm), mean]))
}

function asPct(ratio: number | null): number | null {
  return ratio === null ? null : 100 * (ratio - 1)
}
