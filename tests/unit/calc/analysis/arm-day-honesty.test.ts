import { describe, expect, test } from 'vitest'
import { countArmDays, type DoughRow } from '@/lib/calc/analysis/count-arm-days'
import { type ErrorUnit, fitArmDays } from '@/lib/calc/analysis/fit-arm-days'
import { type ArmDayQuestion, judgeArmDays } from '@/lib/calc/analysis/judge-arm-days'
import { judgeLogRatios } from '@/lib/calc/analysis/judge-log-ratios'
import { ownDayInterval } from '@/lib/calc/analysis/own-day-interval'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'
import { mostWrong, rateCheck } from '@/tests/support/rate-check'

const TRIALS = forLong(400, 10_000)
const CONFIDENCE = 0.95
const LEVEL = 0.05
const DOUGH_SD = 45
const DAY_SD = 80

type Design = {
  days: number
  arms: number
  /** Doughs a day, of the control and of each arm. */
  controls: number
  doughs: number
  /** How an effect changes from day to day, in the same way in every arm but those in `changing`. */
  dayByArmSd: number
  /** Only this arm's effect changes by day. */
  isOneArmAlone?: boolean
  /** Doughs that are lost, as arm, day and copy. */
  lost?: readonly string[]
}

const armsOf = ({ arms }: Design) => Array.from({ length: arms + 1 }, (_, arm) => String(arm))

/**
 * The doughs of a trial: no arm has an effect over all days there might be. `shift` is what the effects were on these.
 */
function simulate(seed: string, q: Design): { rows: DoughRow[]; shifts: number[] } {
  const random = seededRandom(seed)
  const rows: DoughRow[] = []
  const shifts = armsOf(q).map(() => 0)
  for (let day = 0; day < q.days; day++) {
    const level = 2500 + DAY_SD * normalDeviate(random)
    armsOf(q).forEach((arm, i) => {
      const changes = q.isOneArmAlone === true ? i === 1 : true
      const shift = changes ? q.dayByArmSd * normalDeviate(random) : 0
      shifts[i]! += shift / q.days
      for (let copy = 0; copy < (i === 0 ? q.controls : q.doughs); copy++) {
        const y = level + shift + DOUGH_SD * normalDeviate(random)
        const isLost = q.lost?.includes(`${arm} ${day} ${copy}`) === true
        rows.push({ arm, block: String(day), ...(isLost ? {} : { y }) })
      }
    })
  }
  return { rows, shifts: shifts.slice(1).map((shift) => shift - shifts[0]!) }
}

const ruleOf = (arms: readonly string[], unit: ErrorUnit, question: ArmDayQuestion) =>
  ({
    arms,
    unit,
    question,
    goodDirection: 'larger',
    margin: { more: 1, less: 1 },
    confidence: CONFIDENCE,
    correlation: 'model',
  }) as const

/**
 * The critical value of a design, which is the same in each of its trials: worked out once, by the calculation itself,
 * and shown to be what its limits are made with.
 */
function criticalOf(q: Design, unit: ErrorUnit, question: ArmDayQuestion = 'gain'): number {
  const { rows } = simulate('critical value', q)
  const found = judgeArmDays({ ...ruleOf(armsOf(q), unit, question), rows })
  const [one] = found.comparisons
  expect(one!.low ?? one!.otherLimit!).toBeCloseTo(one!.estimate - found.criticalValue! * one!.se!, 6)
  return found.criticalValue!
}

/** Estimates and standard errors of a trial, as judgeArmDays has them. */
function fitted(rows: readonly DoughRow[], arms: readonly string[], unit: ErrorUnit) {
  const { differences, differenceCovariance, meanSquare } = fitArmDays(countArmDays({ rows, arms }), { unit })
  return differences.map((estimate, i) => ({ estimate, se: Math.sqrt(meanSquare! * differenceCovariance[i]![i]!) }))
}

const nameOf = (q: Design) =>
  `${q.days} days, ${q.arms} test doughs, ${q.controls} and ${q.doughs} a day` +
  (q.lost ? ', some lost' : '') +
  (q.dayByArmSd === 0 ? '' : `, ${q.isOneArmAlone ? 'one effect changes' : 'effects change'} by day`)

function missed(q: Design, unit: ErrorUnit, truthOf: (shifts: readonly number[]) => readonly number[]) {
  const c = criticalOf(q, unit)
  const arms = armsOf(q)
  let wrong = 0
  for (let seed = 0; seed < TRIALS; seed++) {
    const { rows, shifts } = simulate(`${nameOf(q)} ${seed}`, q)
    const truth = truthOf(shifts)
    if (fitted(rows, arms, unit).some(({ estimate, se }, i) => Math.abs(estimate - truth[i]!) > c * se)) wrong++
  }
  return { trials: TRIALS, wrong }
}
const noEffect = (shifts: readonly number[]) => shifts.map(() => 0)
const onTheseDays = (shifts: readonly number[]) => shifts

describe('the verdict on arm-day means', () => {
  const even = [
    { days: 2, arms: 1, controls: 2, doughs: 2 },
    { days: 2, arms: 3, controls: 4, doughs: 4 },
    { days: 3, arms: 2, controls: 1, doughs: 1 },
    { days: 6, arms: 6, controls: 2, doughs: 2 },
  ].flatMap((q) => [
    { ...q, dayByArmSd: 0 },
    { ...q, dayByArmSd: 60 },
  ])
  const uneven = [
    { days: 4, arms: 2, controls: 2, doughs: 1, dayByArmSd: 0 },
    { days: 4, arms: 3, controls: 2, doughs: 2, dayByArmSd: 0, lost: ['1 0 0', '2 1 1', '0 2 0', '3 3 0', '3 3 1'] },
  ]

  for (const q of [...even, ...uneven])
    rateCheck({
      what: `not all intervals of a trial hold the truth: ${nameOf(q)}`,
      stated: LEVEL,
      isExact: true,
      count: () => missed(q, 'arm-days', noEffect),
    })

  const odd = [
    { days: 4, arms: 3, controls: 1, doughs: 1, dayByArmSd: 90, isOneArmAlone: true },
    { days: 4, arms: 6, controls: 2, doughs: 2, dayByArmSd: 90, isOneArmAlone: true },
    { days: 3, arms: 2, controls: 4, doughs: 1, dayByArmSd: 60 },
    { days: 4, arms: 3, controls: 2, doughs: 2, dayByArmSd: 60, lost: ['1 0 0', '1 1 1', '0 2 0', '3 3 0', '3 3 1'] },
  ]
  for (const q of odd) {
    const own = (isWrong: (low: number, high: number) => boolean) => () => {
      const arms = armsOf(q)
      let wrong = 0
      for (let seed = 0; seed < TRIALS; seed++) {
        const { cells } = countArmDays({ rows: simulate(`own ${nameOf(q)} ${seed}`, q).rows, arms })
        const of = (arm: string) => cells.filter((cell) => cell.arm === arm).map(({ mean }) => mean)
        const [control, first] = [of('0'), of('1')]
        const differences = first.map((mean, i) => mean - control[i]!)
        const { low, high } = ownDayInterval({ differences, confidence: CONFIDENCE, size: 2500 })
        if (isWrong(low!, high!)) wrong++
      }
      return { trials: TRIALS, wrong }
    }
    rateCheck({
      what: `the interval from a dough’s own days does not hold the truth: ${nameOf(q)}`,
      stated: LEVEL,
      isExact: true,
      count: own((low, high) => low > 0 || high < 0),
    })
    rateCheck({
      what: `its own days show a gain of a dough without effect, as 'better' asks for: ${nameOf(q)}`,
      stated: LEVEL / 2,
      count: own((low) => low > 0),
    })
  }
})

describe('the verdict for these days only', () => {
  for (const q of [
    { days: 2, arms: 1, controls: 2, doughs: 2, dayByArmSd: 60 },
    { days: 2, arms: 3, controls: 4, doughs: 4, dayByArmSd: 60 },
    { days: 1, arms: 2, controls: 4, doughs: 3, dayByArmSd: 60 },
  ])
    rateCheck({
      what: `not all intervals hold what the doughs did on these days: ${nameOf(q)}`,
      stated: LEVEL,
      count: () => missed(q, 'doughs', onTheseDays),
    })

  // Why the unit is the arm-day mean: of other days such intervals are wrong far more often than one in twenty.
  for (const q of [
    { days: 2, arms: 1, controls: 2, doughs: 2, dayByArmSd: 45 },
    { days: 2, arms: 3, controls: 4, doughs: 4, dayByArmSd: 45 },
  ])
    test(`it does not hold of other days: ${nameOf(q)}`, () => {
      const { trials, wrong } = missed(q, 'doughs', noEffect)
      expect(wrong).toBeGreaterThan(mostWrong(trials, LEVEL))
    })
})

describe('the verdict in %', () => {
  const q = { days: 5, controls: 2, doughs: 2, dayByArmSd: 0 }
  /** Loaves of lognormal doughs, the arms so many times the control. */
  const logs = (seed: string, ratio: number, design: Design) =>
    simulate(seed, design).rows.map((row) => ({
      ...row,
      // 4.5 % between doughs; the logs are what the model is fitted to
      y: (row.arm === '0' ? 0 : Math.log(ratio)) + (row.y! - 2500) / 1000,
    }))
  const wrongAt =
    (
      ratio: number,
      design: Design,
      question: ArmDayQuestion,
      isWrong: (ratioLow: number, ratioHigh: number) => boolean,
    ) =>
    () => {
      const c = criticalOf(design, 'arm-days', question)
      mustBeRatiosOfLogs(logs(`${ratio}`, ratio, design), design, question, c)
      let wrong = 0
      for (let seed = 0; seed < TRIALS; seed++) {
        const arms = fitted(logs(`${ratio} ${question} ${seed}`, ratio, design), armsOf(design), 'arm-days')
        if (arms.some(({ estimate, se }) => isWrong(Math.exp(estimate - c * se), Math.exp(estimate + c * se)))) wrong++
      }
      return { trials: TRIALS, wrong }
    }

  /** That what is counted below are the limits that the calculation itself gives of such loaves. */
  function mustBeRatiosOfLogs(rows: readonly DoughRow[], design: Design, question: ArmDayQuestion, c: number) {
    const arms = armsOf(design)
    const loaves = rows.map((row) => ({ ...row, y: Math.exp(row.y!) }))
    const { comparisons } = judgeLogRatios({ ...ruleOf(arms, 'arm-days', question), rows: loaves, marginPct: 20 })
    expect(comparisons.map(({ low }) => low)).toEqual(
      fitted(rows, arms, 'arm-days').map(({ estimate, se }) => expect.closeTo(Math.exp(estimate - c * se), 8)),
    )
  }

  for (const arms of [1, 3])
    for (const ratio of [1.3, 1.6])
      rateCheck({
        what: `not all intervals hold a true ${ratio} times the control: ${arms} test doughs`,
        stated: LEVEL,
        isExact: true,
        count: wrongAt(ratio, { ...q, arms }, 'gain', (low, high) => low > ratio || high < ratio),
      })

  for (const arms of [1, 3]) {
    for (const ratio of [0.8, 1.2])
      rateCheck({
        what: `a dough at ${ratio} times the control is called the same within 20 %: ${arms} test doughs`,
        stated: LEVEL,
        count: wrongAt(ratio, { ...q, arms }, 'same', (low, high) => low > 0.8 && high < 1.2),
      })
    rateCheck({
      what: `a dough 20 % below the control is called no worse by less than 20 %: ${arms} test doughs`,
      stated: LEVEL,
      isExact: true,
      count: wrongAt(0.8, { ...q, arms }, 'no-worse', (low) => low > 0.8),
    })
  }
})
