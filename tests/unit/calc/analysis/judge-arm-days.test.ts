import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { DoughRow } from '@/lib/calc/analysis/count-arm-days'
import { judgeArmDays } from '@/lib/calc/analysis/judge-arm-days'
import { CalcError } from '@/lib/calc/error'
import { forLong } from '@/tests/support/long'

type Question = Parameters<typeof judgeArmDays>[0]

const ARMS = ['control', 'b', 'c', 'd']
/** A trial takes some ten milliseconds. */
const RUNS = { numRuns: forLong(25, 250) }
const rule = {
  arms: ARMS,
  question: 'gain',
  goodDirection: 'larger',
  margin: { more: 60, less: 60 },
  confidence: 0.95,
  unit: 'arm-days',
  correlation: 'numbers-kept',
} satisfies Omit<Question, 'rows'>

/** Three to five days, one to three doughs in a cell, some lost, values of a loaf's volume. */
const trial = fc
  .tuple(
    fc.integer({ min: 3, max: 5 }),
    fc.integer({ min: 1, max: 3 }),
    fc.array(fc.integer({ min: 2200, max: 2900 }), { minLength: 60, maxLength: 60 }),
    fc.array(fc.integer({ min: 0, max: 59 }), { maxLength: 6 }),
  )
  .map(([days, doughs, values, lost]) =>
    Array.from({ length: days * ARMS.length * doughs }, (_, i): DoughRow => {
      const place = {
        arm: ARMS[Math.floor(i / doughs) % ARMS.length]!,
        block: `d${Math.floor(i / doughs / ARMS.length)}`,
      }
      return lost.includes(i) ? place : { ...place, y: values[i]! }
    }),
  )

const near = (value: number | null, scale = 1) => (value === null ? null : expect.closeTo(value * scale, 5))
const figuresOf = (found: ReturnType<typeof judgeArmDays>, scale = 1) => ({
  df: found.df,
  leftOut: found.leftOut,
  comparisons: found.comparisons.map((one) => ({
    arm: one.arm,
    estimate: near(one.estimate, scale),
    se: near(one.se, scale),
    low: near(one.low, scale),
    high: near(one.high, scale),
    ownLow: near(one.own?.low ?? null, scale),
    verdict: one.verdict,
  })),
})
/** Plain figures, to be held against those of `figuresOf`. */
const plainOf = (found: ReturnType<typeof judgeArmDays>) => ({
  df: found.df,
  leftOut: found.leftOut,
  comparisons: found.comparisons.map((one) => ({
    arm: one.arm,
    estimate: one.estimate,
    se: one.se,
    low: one.low,
    high: one.high,
    ownLow: one.own?.low ?? null,
    verdict: one.verdict,
  })),
})
/** The answer, or why there is none. */
function answered(q: Question): ReturnType<typeof judgeArmDays> | string {
  try {
    return judgeArmDays(q)
  } catch (error) {
    if (error instanceof CalcError) return `${error.code} ${error.facts.reason}`
    throw error
  }
}
const holds = (before: Question, after: Question, scale = 1) => {
  const [one, two] = [answered(before), answered(after)]
  if (typeof one === 'string' || typeof two === 'string') expect(two).toBe(one)
  else expect(plainOf(two)).toEqual(figuresOf(one, scale))
}

describe('whatever the doughs are,', () => {
  test('a day that is higher as a whole changes nothing', () => {
    fc.assert(
      fc.property(trial, fc.integer({ min: -900, max: 900 }), (rows, shift) => {
        const moved = rows.map((row) =>
          row.block === 'd1' && row.y !== undefined ? { ...row, y: row.y + shift } : row,
        )
        holds({ ...rule, rows }, { ...rule, rows: moved })
      }),
      RUNS,
    )
  })

  test('another unit of the measure scales the figures and leaves the verdicts', () => {
    fc.assert(
      fc.property(trial, fc.constantFrom(0.001, 0.5, 16), (rows, scale) => {
        const scaled = rows.map((row) => (row.y === undefined ? row : { ...row, y: row.y * scale }))
        const margin = { more: 60 * scale, less: 60 * scale }
        holds({ ...rule, rows }, { ...rule, rows: scaled, margin }, scale)
      }),
      RUNS,
    )
  })

  test('the order of arms and rows matters to no figure', () => {
    fc.assert(
      fc.property(trial, (rows) => {
        const one = answered({ ...rule, rows })
        const two = answered({ ...rule, rows: rows.toReversed(), arms: ['control', 'd', 'b', 'c'] })
        if (typeof one === 'string' || typeof two === 'string') {
          expect(two).toBe(one)
          return
        }
        const byName = (a: { arm: string }, b: { arm: string }) => a.arm.localeCompare(b.arm)
        expect(plainOf(two).comparisons.toSorted(byName)).toEqual(figuresOf(one).comparisons.toSorted(byName))
      }),
      RUNS,
    )
  })

  test('with smaller as better, the verdicts on −y are those on y with larger as better', () => {
    fc.assert(
      fc.property(trial, fc.constantFrom<Question['question'][]>('gain', 'no-worse', 'same'), (rows, question) => {
        const turned = rows.map((row) => (row.y === undefined ? row : { ...row, y: -row.y }))
        const margin = { more: 60, less: 45 }
        const one = answered({ ...rule, question, margin, rows })
        const two = answered({
          ...rule,
          question,
          rows: turned,
          goodDirection: 'smaller',
          margin: { more: 45, less: 60 },
        })
        if (typeof one === 'string' || typeof two === 'string') {
          expect(two).toBe(one)
          return
        }
        expect(two.comparisons.map(({ verdict, clearly }) => ({ verdict, clearly }))).toEqual(
          one.comparisons.map(({ verdict, clearly }) => ({ verdict, clearly })),
        )
        expect(two.comparisons.map(({ low }) => low)).toEqual(
          one.comparisons.map(({ high }) => (high === null ? null : expect.closeTo(-high, 6))),
        )
      }),
      RUNS,
    )
  })

  test('the limits of a gain hold those of one side, and of single doughs the estimates are the same', () => {
    fc.assert(
      fc.property(trial, (rows) => {
        const [two, one, single] = [
          answered({ ...rule, rows }),
          answered({ ...rule, rows, question: 'same' }),
          answered({ ...rule, rows, unit: 'doughs' }),
        ]
        if (typeof two === 'string' || typeof one === 'string' || typeof single === 'string') return
        two.comparisons.forEach(({ low, high, estimate }, i) => {
          expect(single.comparisons[i]!.estimate).toBeCloseTo(estimate, 6)
          if (low === null || high === null) return
          expect(one.comparisons[i]!.low).toBeGreaterThan(low)
          expect(one.comparisons[i]!.high).toBeLessThan(high)
        })
      }),
      RUNS,
    )
  })
})

const volumes = (byArm: Record<string, readonly number[]>): DoughRow[] =>
  Object.entries(byArm).flatMap(([arm, values]) => values.map((y, i) => ({ arm, block: `d${i}`, y })))

test('better on the pooled error alone is said where the arm’s own days do not show it', () => {
  // b gains on each day, by more on some than on others; c and d are steady, so that the pooled error is small
  const rows = volumes({
    control: [2400, 2500, 2450, 2480],
    b: [2420, 2690, 2480, 2690],
    c: [2401, 2502, 2449, 2481],
    d: [2399, 2501, 2452, 2479],
  })
  const [b] = judgeArmDays({ ...rule, rows }).comparisons
  expect(b!.low).toBeGreaterThan(0)
  expect(b!.own!.low).toBeLessThan(0)
  expect(b).toMatchObject({ verdict: 'better-on-pooled-error-only', clearly: false })
  const [onTheseDays] = judgeArmDays({ ...rule, rows, unit: 'doughs' }).comparisons
  expect(onTheseDays).toMatchObject({ verdict: 'better', own: null })
})

test('an arm of one mixing day is never plainly better', () => {
  const rows = volumes({ control: [2400, 2500, 2450], b: [2700], c: [2401, 2502, 2449], d: [2399, 2501, 2452] })
  expect(judgeArmDays({ ...rule, rows }).comparisons[0]).toMatchObject({
    own: { days: 1, low: null },
    verdict: 'better-on-pooled-error-only',
  })
})

test('without error or without degrees of freedom there is no interval and no verdict, whatever is asked', () => {
  for (const question of ['gain', 'no-worse', 'same'] as const) {
    const alike = volumes({ control: [2400, 2500], b: [2700, 2800] })
    const found = judgeArmDays({ ...rule, question, arms: ['control', 'b'], rows: alike })
    expect(found).toMatchObject({ meanSquare: 0, noInterval: 'zero-variance', criticalValue: null })
    expect(found.comparisons[0]).toMatchObject({ estimate: 300, se: null, low: null, high: null, verdict: null })
    const oneDay = volumes({ control: [2400], b: [2700] })
    const none = judgeArmDays({ ...rule, question, arms: ['control', 'b'], rows: oneDay })
    expect(none).toMatchObject({ df: 0, meanSquare: null, noInterval: 'no-residual-df' })
    expect(none.comparisons[0]).toMatchObject({ low: null, high: null, verdict: null })
  }
})

test('an arm that is left out is named and leaves the family: the others’ limits are as if it had not been planned', () => {
  const rows = volumes({ control: [2400, 2510, 2450], b: [2490, 2580, 2570], c: [2401, 2502, 2479] })
  const lost = [...rows, { arm: 'd', block: 'd0' }, { arm: 'd', block: 'd9', y: 2600 }]
  const [planned, without] = [
    judgeArmDays({ ...rule, rows: lost }),
    judgeArmDays({ ...rule, rows, arms: ['control', 'b', 'c'] }),
  ]
  expect(planned.leftOut).toEqual(['d'])
  expect(planned.completeDays).toBe(0)
  expect(planned.comparisons).toEqual(without.comparisons)
})

test('with the same proportions every day the model’s correlation is the product form by doughs kept', () => {
  const doubled = volumes({ control: [2400, 2510, 2450], b: [2490, 2580, 2570], c: [2401, 2502, 2479], d: [1, 2, 4] })
  const rows = [...doubled, ...doubled.filter(({ arm }) => arm === 'control')]
  const [kept, model] = [judgeArmDays({ ...rule, rows }), judgeArmDays({ ...rule, rows, correlation: 'model' })]
  expect(model.adjustment).toBe('dunnett-product')
  expect(model.criticalValue).toBeCloseTo(kept.criticalValue!, 9)
})

test('no worse gives the limit that it asks for, and the other one beside it; without a good direction no verdict', () => {
  const rows = volumes({ control: [2400, 2510, 2450, 2480], b: [2410, 2500, 2470, 2475] })
  const q = { ...rule, arms: ['control', 'b'], question: 'no-worse' as const, rows }
  const [up] = judgeArmDays(q).comparisons
  expect(up).toMatchObject({ high: null, verdict: 'no-worse' })
  expect(up!.otherLimit).toBeGreaterThan(up!.estimate)
  const [down] = judgeArmDays({ ...q, goodDirection: 'smaller' }).comparisons
  expect(down).toMatchObject({ low: null, high: up!.otherLimit, otherLimit: up!.low })
  const [none] = judgeArmDays({ ...q, goodDirection: null }).comparisons
  expect(none).toMatchObject({ low: up!.low, high: up!.otherLimit, verdict: null })
  expect(judgeArmDays({ ...q, question: 'gain', goodDirection: null }).comparisons[0]!.verdict).toBeNull()
  const [worse] = judgeArmDays({
    ...q,
    margin: { more: 1, less: 1 },
    rows: volumes({ control: [2400, 2510, 2450], b: [2200, 2309, 2251] }),
  }).comparisons
  expect(worse!.verdict).toBe('worse')
})

test('what cannot be judged is refused with its reason', () => {
  const rows = volumes({ control: [2400, 2510], b: [2410, 2500] })
  const q = { ...rule, arms: ['control', 'b'], rows }
  expect(() => judgeArmDays({ ...q, rows: rows.map(({ arm, block }) => ({ arm, block })) })).toThrow('no-day-counted')
  expect(() => judgeArmDays({ ...q, rows: rows.slice(0, 1) })).toThrow('no-day-counted')
  expect(() => judgeArmDays({ ...q, rows: rows.map((row) => ({ ...row, y: NaN })) })).toThrow('not-finite')
  expect(() => judgeArmDays({ ...q, margin: { more: 0, less: 1 } })).toThrow('margin')
  expect(() => judgeArmDays({ ...q, margin: { more: 1, less: -1 } })).toThrow('margin')
  expect(() => judgeArmDays({ ...q, confidence: 95 })).toThrow('confidence')
})
