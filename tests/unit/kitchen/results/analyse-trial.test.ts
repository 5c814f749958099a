import { describe, expect, test } from 'vitest'
import { dunnettQuantile } from '@/lib/calc/distributions/dunnett-quantile'
import { analyseTrial } from '@/lib/kitchen/results/analyse-trial'
import type { MeasuredBatch } from '@/lib/kitchen/results/trial-facts'
import { declaredTrial, maltDoughs, measuredBatch } from '@/tests/support/evidence-samples'

const analysed = (batches: readonly MeasuredBatch[], change: Parameters<typeof declaredTrial>[0] = {}) =>
  analyseTrial(declaredTrial(change), batches)
const codesOf = (analysis: ReturnType<typeof analyseTrial>) =>
  analysis.limits.map(({ code, arm }) => (arm === null ? code : `${code} ${arm}`))
const armOf = (analysis: ReturnType<typeof analyseTrial>, arm: number) => analysis.comparison!.arms[arm]!
const changed = (is: (batch: MeasuredBatch) => boolean, change: Partial<MeasuredBatch>) =>
  maltDoughs.map((batch) => (is(batch) ? { ...batch, ...change } : batch))

describe('a whole trial', () => {
  const whole = analysed(maltDoughs)

  test('gives the differences of dough means worked out by hand, and the verdicts of the declared rule', () => {
    // Means by day: control 4.00, 4.12, 3.93; A 4.03, 4.10, 3.97; B 4.42, 4.50, 4.33.
    expect(whole.stage).toBe('whole')
    expect(whole.limits).toEqual([])
    expect(armOf(whole, 0).mean).toBeCloseTo(12.05 / 3, 12)
    expect(armOf(whole, 1).effect!.estimate).toBeCloseTo(0.05 / 3, 12)
    expect(armOf(whole, 2).effect!.estimate).toBeCloseTo(1.2 / 3, 12)
    expect(armOf(whole, 2).effect!.pct).toBeCloseTo((100 * 1.2) / 12.05, 10)
    expect(armOf(whole, 1).verdict).toEqual({ verdict: 'no-worthwhile-difference', clearly: false })
    expect(armOf(whole, 2).verdict).toEqual({ verdict: 'better', clearly: true })
  })

  test('rests its intervals on doughs, not on loaves: 4 degrees of freedom from 9 doughs', () => {
    // Residual sum of squares of the two-way table, by hand: means less row, less column, plus grand mean.
    const table = [
      [4.0, 4.03, 4.42],
      [4.12, 4.1, 4.5],
      [3.93, 3.97, 4.33],
    ]
    const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
    const rows = table.map(mean)
    const columns = [0, 1, 2].map((j) => mean(table.map((row) => row[j]!)))
    const squares = table
      .flatMap((row, i) => row.map((value, j) => (value - rows[i]! - columns[j]! + mean(rows)) ** 2))
      .reduce((sum, value) => sum + value, 0)
    const sd = Math.sqrt(squares / 4)
    const half =
      dunnettQuantile({ p: 0.05, df: 4, sides: 'two', loadings: [Math.SQRT1_2, Math.SQRT1_2] }) * sd * Math.sqrt(2 / 3)
    const { effect } = armOf(whole, 2)
    expect(whole.comparison!.method).toMatchObject({ df: 4, model: 'arm-and-block', limits: 'two-sided' })
    expect(whole.comparison!.method!.batchSd).toBeCloseTo(sd, 12)
    expect(effect!.high! - effect!.estimate).toBeCloseTo(half, 6)
    expect(effect!.estimate - effect!.low!).toBeCloseTo(half, 6)
  })

  test('does not change with the number of times a loaf is repeated in a dough', () => {
    const more = maltDoughs.map((batch) => ({ ...batch, pieces: [...batch.pieces, ...batch.pieces] }))
    expect(armOf(analysed(more), 2).effect!.low).toBeCloseTo(armOf(whole, 2).effect!.low!, 10)
  })

  test('freezes a % margin on the control’s mean, and leaves one in units', () => {
    expect(whole.comparison!.worthwhile).toBeCloseTo((0.04 * 12.05) / 3, 12)
    expect(analysed(maltDoughs, { marginUnit: 'unit', margin: 0.5 }).comparison!.worthwhile).toBe(0.5)
    expect(armOf(analysed(maltDoughs, { marginUnit: 'unit', margin: 0.5 }), 2).verdict!.verdict).toBe(
      'no-worthwhile-difference',
    )
  })

  test('turns the verdict round where smaller is better, and gives none without a direction', () => {
    const measure = { name: 'Bake loss', unit: '%', digits: 1 }
    expect(armOf(analysed(maltDoughs, { measure: { ...measure, direction: 'smaller' } }), 2).verdict).toEqual({
      verdict: 'worse',
      clearly: true,
    })
    const without = analysed(maltDoughs, { measure: { ...measure, direction: 'none' } })
    expect(armOf(without, 2).verdict).toBeNull()
    expect(armOf(without, 2).effect!.low).not.toBeNull()
    expect(codesOf(without)).toEqual(['no-direction'])
  })

  test('shows each loaf against the control of its own day', () => {
    const point = whole.comparison!.points.find(({ batchId }) => batchId === '2-2')!
    expect(point.difference).toBeCloseTo(4.5 - 4.12, 12)
    expect(point.loaves.map((loaf) => Number(loaf.toFixed(10)))).toEqual([0.4, 0.36])
  })
})

describe('the question decides the rule', () => {
  test.each([
    ['no_worse', 1, 'no-worse'],
    ['no_worse', 2, 'no-worse'],
    ['same_as', 1, 'same'],
    ['same_as', 2, 'different'],
    ['which_dose', 2, 'better'],
  ] as const)('%s, dough %i: %s', (kind, arm, verdict) => {
    expect(armOf(analysed(maltDoughs, { kind }), arm).verdict!.verdict).toBe(verdict)
  })

  test('no worse and same rest on one-sided limits, which are closer than two-sided ones', () => {
    const oneSided = analysed(maltDoughs, { kind: 'no_worse' })
    expect(oneSided.comparison!.method!.limits).toBe('one-sided-pair')
    expect(armOf(oneSided, 2).effect!.low!).toBeGreaterThan(armOf(analysed(maltDoughs), 2).effect!.low!)
  })

  test('a look only gets no verdict', () => {
    const look = analysed(maltDoughs, { kind: 'look_only' })
    expect(look.comparison!.arms.every(({ verdict }) => verdict === null)).toBe(true)
    expect(codesOf(look)).toEqual(['look-only-asked'])
  })
})

describe('nothing is compared before the readings are closed', () => {
  test.each(['approved', 'baking'] as const)('%s with a dough still open', (state) => {
    const analysis = analysed(
      changed(({ id }) => id === '3-2', { state: 'baked' }),
      { state },
    )
    expect(analysis).toMatchObject({ stage: 'in-progress', comparison: null, limits: [], open: 1 })
    expect(analysis.days[2]).toEqual({ day: 3, measured: 2, ended: 0, open: 1 })
  })

  test.each(['approved', 'baking'] as const)('%s, and all in: still nothing, of any arm', (state) => {
    const analysis = analysed(maltDoughs, { state })
    expect(analysis).toMatchObject({ stage: 'all-in', comparison: null, limits: [], open: 0 })
  })

  test('whether the control was lost is not told before', () => {
    const lost = (arm: number) =>
      analysed(
        changed(({ id }) => id === `3-${arm}`, { state: 'lost', stateWhy: 'dropped' }),
        { state: 'baking' },
      ).days
    expect(lost(0)).toEqual(lost(1))
  })

  test.each(['draft', 'proposed', 'declined'] as const)('%s: nothing at all', (state) => {
    expect(analysed([], { state })).toMatchObject({ stage: 'before', comparison: null })
  })
})

describe('what is left when something is missing', () => {
  test('a day without its control does not count, and its doughs are named', () => {
    const analysis = analysed(changed(({ id }) => id === '3-0', { state: 'lost', stateWhy: 'dropped' }))
    expect(analysis.uncounted.map(({ batch, why }) => `${batch.id} ${why}`).sort()).toEqual([
      '3-0 lost',
      '3-1 day-without-control',
      '3-2 day-without-control',
    ])
    expect(codesOf(analysis)).toEqual(['fewer-days'])
    expect(analysis.limits[0]!.facts).toEqual({ counted: 2, planned: 3 })
    expect(armOf(analysis, 2).effect!.estimate).toBeCloseTo((0.42 + 0.38) / 2, 12)
    // Closed, not stopped, and still not the days that were declared: no verdict words.
    expect(analysis.comparison!.isIndication).toBe(true)
    expect(armOf(analysis, 2).verdict).toBeNull()
  })

  test('a lost dough of an arm leaves the others of its day in', () => {
    const analysis = analysed(changed(({ id }) => id === '2-1', { state: 'set_aside', stateWhy: 'wrong flour' }))
    expect(analysis.comparison!.arms.map(({ batches }) => batches)).toEqual([3, 2, 3])
    expect(armOf(analysis, 1).standing).toBe('compared')
    expect(analysis.uncounted.map(({ why }) => why)).toEqual(['set-aside'])
  })

  test('a loaf that was not read is left out of its dough; a dough without any does not count', () => {
    const part = changed(({ id }) => id === '1-2', {
      pieces: measuredBatch({ arm: 2, day: 1, values: [4.4, null] }).pieces,
    })
    expect(codesOf(analysed(part))).toEqual(['unequal-loaves'])
    expect(armOf(analysed(part), 2).loaves).toBe(5)
    const none = analysed(changed(({ id }) => id === '1-2', { pieces: [] }))
    expect(none.uncounted.map(({ why }) => why)).toEqual(['no-reading'])
    expect(armOf(none, 2).batches).toBe(2)
  })

  test('an arm that was lost whole is named, and the other is compared without it', () => {
    const analysis = analysed(changed(({ arm }) => arm === 1, { state: 'lost', stateWhy: 'mixer broke' }))
    expect(codesOf(analysis)).toEqual(['arm-without-batches 1'])
    expect(armOf(analysis, 1)).toMatchObject({ standing: 'no-batches', mean: null, effect: null, verdict: null })
    expect(armOf(analysis, 2).verdict!.verdict).toBe('better')
    expect(analysis.comparison!.method!.adjustment).toBe('student-t')
  })

  test('an arm with one dough is a look only, and the other is compared without it', () => {
    const analysis = analysed(
      changed(({ arm, day }) => arm === 1 && day > 1, { state: 'lost', stateWhy: 'mixer broke' }),
    )
    expect(codesOf(analysis)).toEqual(['one-batch-in-arm 1'])
    expect(armOf(analysis, 1)).toMatchObject({ standing: 'look-only', verdict: null })
    expect(armOf(analysis, 1).effect).toMatchObject({ low: null, high: null, p: null })
    expect(armOf(analysis, 1).effect!.estimate).toBeCloseTo(0.03, 12)
  })

  test('one dough of each on one day: a look only, with its differences', () => {
    const analysis = analysed(
      maltDoughs.filter(({ day }) => day === 1),
      { mixingDays: 1 },
    )
    expect(codesOf(analysis)).toEqual(['one-batch-per-arm'])
    expect(analysis.comparison!.arms.map(({ standing }) => standing)).toEqual(['control', 'look-only', 'look-only'])
    expect(armOf(analysis, 2).effect!.estimate).toBeCloseTo(0.42, 12)
    expect(analysis.comparison!.method).toBeNull()
  })

  test('no control at all', () => {
    const analysis = analysed(changed(({ arm }) => arm === 0, { state: 'lost', stateWhy: 'x' }))
    expect(codesOf(analysis)).toEqual(['fewer-days', 'no-control'])
    expect(analysis.comparison!.worthwhile).toBeNull()
  })

  test('several doughs of each on one day are compared, and it says that it was one day', () => {
    const oneDay = maltDoughs.map((batch) => ({ ...batch, day: 1 }))
    const analysis = analysed(oneDay, { mixingDays: 1, batchesPerArm: 3 })
    expect(codesOf(analysis)).toEqual(['one-day'])
    expect(analysis.comparison!.method).toMatchObject({ model: 'arm', df: 6 })
    expect(armOf(analysis, 2).standing).toBe('compared')
  })

  test('all doughs of one arm from one day are named', () => {
    const batches = [
      ...maltDoughs.filter(({ arm }) => arm !== 2),
      measuredBatch({ arm: 2, day: 1, values: [4.4] }),
      measuredBatch({ arm: 2, day: 1, values: [4.5], change: { id: 'again', code: '199' } }),
    ]
    expect(codesOf(analysed(batches))).toContain('arm-on-one-day 2')
  })

  test('doughs without any variation: differences without intervals', () => {
    const flat = maltDoughs.map((batch) =>
      measuredBatch({ arm: batch.arm, day: batch.day, values: [4 + batch.arm / 4] }),
    )
    const analysis = analysed(flat)
    expect(codesOf(analysis)).toEqual(['zero-variance'])
    expect(armOf(analysis, 2)).toMatchObject({ standing: 'look-only', verdict: null })
    expect(armOf(analysis, 2).effect!.estimate).toBeCloseTo(0.5, 12)
  })

  test('the fewest doughs that can be compared leave one degree of freedom', () => {
    const analysis = analysed(
      maltDoughs.filter(({ arm, day }) => arm !== 1 && day < 3),
      { mixingDays: 2 },
    )
    expect(codesOf(analysis)).toEqual(['arm-without-batches 1'])
    expect(analysis.comparison!.method!.df).toBe(1)
    expect(armOf(analysis, 2).standing).toBe('compared')
  })

  test('a margin that cannot be put into units takes the verdict away and leaves the interval', () => {
    const analysis = analysed(maltDoughs, { margin: 100 })
    expect(codesOf(analysis)).toEqual(['margin-unusable'])
    expect(armOf(analysis, 2).verdict).toBeNull()
    expect(armOf(analysis, 2).effect!.low).not.toBeNull()
  })

  test('a stopped trial is an indication without a verdict, and its open doughs do not count', () => {
    const analysis = analysed(
      changed(({ day }) => day === 3, { state: 'waiting', pieces: [] }),
      { state: 'stopped' },
    )
    expect(analysis.stage).toBe('stopped-early')
    expect(codesOf(analysis)).toEqual(['stopped-early', 'fewer-days'])
    expect(analysis.comparison!.isIndication).toBe(true)
    expect(armOf(analysis, 2).verdict).toBeNull()
    expect(armOf(analysis, 2).effect!.low).not.toBeNull()
    expect(analysis.uncounted.map(({ why }) => why)).toEqual(['open', 'open', 'open'])
  })
})

describe('a factor within doughs', () => {
  const levels = ['180', '220']
  const declared = declaredTrial({
    factor: { name: 'Baking temperature', levels },
    arms: declaredTrial().arms.slice(0, 2),
  })
  const values = [
    [
      [4.02, 4.21],
      [4.3, 4.45],
    ],
    [
      [4.11, 4.24],
      [4.28, 4.52],
    ],
    [
      [3.95, 4.2],
      [4.36, 4.4],
    ],
  ]
  const doughs = values.flatMap((ofDay, i) =>
    ofDay.map((ofArm, arm) => measuredBatch({ arm, day: i + 1, levels, values: ofArm })),
  )

  test('a dough that misses one level does not count, and the levels are shown without tests', () => {
    expect(analyseTrial(declared, doughs).comparison!.levels!.tests).not.toBeNull()
    const broken = doughs.map((batch) => (batch.id === '3-1' ? { ...batch, pieces: batch.pieces.slice(1) } : batch))
    const analysis = analyseTrial(declared, broken)
    expect(analysis.uncounted.map(({ why }) => why)).toEqual(['level-missing'])
    expect(analysis.limits.map(({ code }) => code)).toContain('levels-not-balanced')
    expect(analysis.comparison!.levels!.tests).toBeNull()
  })
})
