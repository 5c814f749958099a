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
    // In % it is the mean of the days' logarithms of ratios.
    const logs = [4.42 / 4, 4.5 / 4.12, 4.33 / 3.93].map(Math.log)
    expect(armOf(whole, 2).effect!.pct).toBeCloseTo(
      100 * (Math.exp(logs.reduce((sum, log) => sum + log, 0) / 3) - 1),
      10,
    )
    expect(armOf(whole, 1).verdict).toEqual({ verdict: 'no-worthwhile-difference', clearly: false })
    expect(armOf(whole, 2).verdict).toEqual({ verdict: 'better', clearly: true })
  })

  test('rests its intervals on arm-day means of logarithms: 4 degrees of freedom from 9 doughs', () => {
    // Residual sum of squares of the two-way table, by hand: logarithms less row, less column, plus grand mean.
    const table = [
      [4.0, 4.03, 4.42],
      [4.12, 4.1, 4.5],
      [3.93, 3.97, 4.33],
    ].map((row) => row.map(Math.log))
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
    expect(whole.comparison!.method).toMatchObject({ df: 4, scale: 'log-ratio', limits: 'two-sided' })
    expect(whole.comparison!.method!.doughSd).toBeCloseTo(100 * sd, 10)
    const log = Math.log1p(effect!.pct! / 100)
    expect(effect!.highPct).toBeCloseTo(100 * (Math.exp(log + half) - 1), 4)
    expect(effect!.lowPct).toBeCloseTo(100 * (Math.exp(log - half) - 1), 4)
    // The unit beside it carries no limits: the verdict is not its.
    expect(effect).toMatchObject({ low: null, high: null })
  })

  test('a margin in the unit is judged in the unit, with Fieller’s ratio beside it', () => {
    const inUnits = analysed(maltDoughs, { marginUnit: 'unit', margin: 0.1 })
    const { effect } = armOf(inUnits, 2)
    expect(inUnits.comparison!.method).toMatchObject({ df: 4, scale: 'units' })
    expect((effect!.low! + effect!.high!) / 2).toBeCloseTo(effect!.estimate, 10)
    expect(effect!.pct).toBeCloseTo((100 * 1.2) / 12.05, 10)
    expect(effect!.lowPct).toBeLessThan(effect!.pct!)
    expect(effect!.highPct).toBeGreaterThan(effect!.pct!)
  })

  test('said of these days only it goes by doughs, and asks nothing of single days', () => {
    const twice = maltDoughs.flatMap((batch) => [
      batch,
      {
        ...batch,
        id: `${batch.id}-again`,
        code: `9${batch.code.slice(1)}`,
        pieces: batch.pieces.map((piece) => ({ ...piece, value: piece.value === null ? null : piece.value * 1.01 })),
      },
    ])
    const own = analysed(twice, { batchesPerArm: 2, holdsFor: 'these_days' })
    // 18 doughs, less 3 kinds and 3 days, plus what the grand mean has twice.
    expect(own.comparison!.method!.df).toBe(18 - 3 - 3 + 1)
    expect(own.limits).toEqual([])
    expect(armOf(own, 2).effect!.own).toBeNull()
    expect(armOf(own, 2).verdict!.verdict).toBe('better')
    // One day of several doughs has a verdict too, which no other day has to agree with.
    const oneDay = analysed(
      twice.filter(({ day }) => day === 1),
      { batchesPerArm: 2, mixingDays: 1, holdsFor: 'these_days' },
    )
    expect(codesOf(oneDay)).not.toContain('one-day')
    expect(oneDay.comparison!.method!.df).toBe(3)
    expect(armOf(oneDay, 2).verdict).not.toBeNull()
    const anyDay = analysed(
      twice.filter(({ day }) => day === 1),
      { batchesPerArm: 2, mixingDays: 1 },
    )
    expect(codesOf(anyDay)).toContain('one-day')
    expect(armOf(anyDay, 2).verdict).toBeNull()
  })

  test('two doughs of an arm on a day are one arm-day: they lend no degrees of freedom', () => {
    const twice = maltDoughs.flatMap((batch) => [
      batch,
      { ...batch, id: `${batch.id}-again`, code: `9${batch.code.slice(1)}` },
    ])
    const doubled = analysed(twice, { batchesPerArm: 2 })
    expect(doubled.comparison!.method!.df).toBe(4)
    expect(armOf(doubled, 2).effect!.lowPct).toBeCloseTo(armOf(whole, 2).effect!.lowPct!, 10)
  })

  test('better asks for the arm’s own days too', () => {
    // B gains 0.2 on two days and 1 on the third; A and the control are steady, so that the pooled error is small.
    const gain = [0.2, 0.2, 1.0]
    const steady = [1, 2, 3].flatMap((day) =>
      Array.from({ length: 6 }, (_, arm) =>
        measuredBatch({ arm, day, values: [4 + 0.001 * ((day * 7 + arm * 5) % 3) + (arm === 1 ? gain[day - 1]! : 0)] }),
      ),
    )
    const arms = Array.from({ length: 6 }, (_, position) => ({ position, name: `${position}`, plannedWaterG: 600 }))
    const analysis = analysed(steady, { arms, marginUnit: 'unit', margin: 0.1 })
    expect(armOf(analysis, 1).effect!.low).toBeGreaterThan(0)
    expect(armOf(analysis, 1).effect!.own).toMatchObject({ days: 3 })
    expect(armOf(analysis, 1).effect!.own!.low).toBeLessThan(0)
    expect(armOf(analysis, 1).verdict).toEqual({ verdict: 'better-on-pooled-error-only', clearly: false })
  })

  test('does not change with the number of times a loaf is repeated in a dough', () => {
    const more = maltDoughs.map((batch) => ({ ...batch, pieces: [...batch.pieces, ...batch.pieces] }))
    expect(armOf(analysed(more), 2).effect!.lowPct).toBeCloseTo(armOf(whole, 2).effect!.lowPct!, 10)
  })

  test('leaves the margin in what it was declared in', () => {
    expect(whole.comparison!.worthwhile).toBe(4)
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
    expect(armOf(without, 2).effect!.lowPct).not.toBeNull()
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
    expect(armOf(oneSided, 2).effect!.lowPct!).toBeGreaterThan(armOf(analysed(maltDoughs), 2).effect!.lowPct!)
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

  test('an arm with a dough on one day stays in, is named, and cannot be better by its own days', () => {
    const analysis = analysed(
      changed(({ arm, day }) => arm === 2 && day > 1, { state: 'lost', stateWhy: 'mixer broke' }),
    )
    expect(codesOf(analysis)).toContain('arm-on-one-day 2')
    expect(armOf(analysis, 2)).toMatchObject({ standing: 'compared', batches: 1 })
    expect(armOf(analysis, 2).effect!.own).toEqual({ days: 1, low: null, high: null })
    expect(armOf(analysis, 2).verdict!.verdict).not.toBe('better')
  })

  test.each([1, 3])('%i doughs of each on one day: differences, without intervals and without a verdict', (doughs) => {
    const oneDay = maltDoughs.filter(({ day }) => day <= doughs).map((batch) => ({ ...batch, day: 1 }))
    const analysis = analysed(oneDay, { mixingDays: 1, batchesPerArm: doughs })
    expect(codesOf(analysis)).toContain('one-day')
    expect(analysis.comparison!.arms.map(({ standing }) => standing)).toEqual(['control', 'look-only', 'look-only'])
    expect(armOf(analysis, 2).effect!.estimate).toBeCloseTo(doughs === 1 ? 0.42 : 0.4, 12)
    expect(armOf(analysis, 2).effect).toMatchObject({ lowPct: null, highPct: null, p: null })
    expect(analysis.comparison!.method).toBeNull()
  })

  test('the control alone on a day is not a day that counts', () => {
    const analysis = analysed(changed(({ arm, day }) => arm > 0 && day === 3, { state: 'lost', stateWhy: 'dropped' }))
    expect(analysis.uncounted.map(({ batch, why }) => `${batch.id} ${why}`).sort()).toEqual([
      '3-0 day-without-others',
      '3-1 lost',
      '3-2 lost',
    ])
    expect(analysis.comparison!.isIndication).toBe(true)
    expect(armOf(analysis, 0).batches).toBe(2)
  })

  test('no control at all', () => {
    const analysis = analysed(changed(({ arm }) => arm === 0, { state: 'lost', stateWhy: 'x' }))
    expect(codesOf(analysis)).toEqual(['fewer-days', 'no-control'])
    expect(analysis.comparison!.worthwhile).toBeNull()
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
    expect(codesOf(analysis)).toEqual(['arm-without-batches 1', 'bad-dough-not-told'])
    expect(analysis.comparison!.method!.df).toBe(1)
    expect(armOf(analysis, 2).standing).toBe('compared')
  })

  test('a margin of all of the control judges nothing', () => {
    const analysis = analysed(maltDoughs, { margin: 100 })
    expect(codesOf(analysis)).toEqual(['margin-unusable'])
    expect(armOf(analysis, 2)).toMatchObject({ standing: 'look-only', verdict: null })
  })

  test('a margin in % of a measure without a true zero judges nothing', () => {
    const measure = { name: 'Crust colour', unit: 'L*', digits: 1, direction: 'larger' } as const
    expect(codesOf(analysed(maltDoughs, { measure }))).toEqual(['no-true-zero'])
    const inUnits = analysed(maltDoughs, { measure, marginUnit: 'unit', margin: 0.1 })
    expect(armOf(inUnits, 2).effect).toMatchObject({ pct: null, lowPct: null, highPct: null })
    expect(armOf(inUnits, 2).verdict!.verdict).toBe('better')
  })

  test('a value at zero has no logarithm, and nothing is concluded in %', () => {
    const analysis = analysed(
      changed(({ id }) => id === '1-2', { pieces: measuredBatch({ arm: 2, day: 1, values: [0] }).pieces }),
    )
    expect(codesOf(analysis)).toContain('not-computable')
    expect(armOf(analysis, 2).verdict).toBeNull()
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
    expect(armOf(analysis, 2).effect!.lowPct).not.toBeNull()
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
    const third = doughs.flatMap(({ arm, day, pieces }) =>
      arm === 0 ? [measuredBatch({ arm: 2, day, levels, values: pieces.map(({ value }) => value! + 0.2) })] : [],
    )
    const of = (batches: readonly MeasuredBatch[]) =>
      analyseTrial(declaredTrial({ factor: declared.factor }), [...batches, ...third])
    expect(of(doughs).comparison!.levels!.tests).not.toBeNull()
    const analysis = of(
      doughs.map((batch) => (batch.id === '3-1' ? { ...batch, pieces: batch.pieces.slice(1) } : batch)),
    )
    expect(analysis.uncounted.map(({ why }) => why)).toEqual(['level-missing'])
    expect(analysis.limits.map(({ code }) => code)).toContain('levels-not-balanced')
    expect(analysis.comparison!.levels!.tests).toBeNull()
  })
})
