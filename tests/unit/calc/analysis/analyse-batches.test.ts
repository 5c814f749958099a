import { expect, test } from 'vitest'
import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'

const random = seededRandom('analyse')
const readings = ['1', '2', '3', '4'].flatMap((block) =>
  ['control', 'b', 'c'].flatMap((arm) => {
    const level = 2500 + (arm === 'b' ? 120 : 0) + 20 * normalDeviate(random)
    return ['1', '2', '3'].map((loaf) => ({
      arm,
      block,
      batch: `${block}${arm}`,
      loaf,
      value: level + 30 * normalDeviate(random),
    }))
  }),
)
const q = { readings, arms: ['control', 'b', 'c'], confidence: 0.95, alternative: 'two-sided', scale: 'plain' } as const

test('baking more loaves of the same batch adds no degrees of freedom for the arms', () => {
  const twice = readings.flatMap((row) => [row, { ...row, loaf: `${row.loaf}b` }])
  const [one, two] = [analyseBatches(q), analyseBatches({ ...q, readings: twice })]
  expect(two.fit.residualDf).toBe(one.fit.residualDf)
  expect(one.fit.residualDf).toBe(6)
  expect(two.comparisons.comparisons[0]!.pAdjusted).toBeCloseTo(one.comparisons.comparisons[0]!.pAdjusted, 10)
})

test('the result names what was done', () => {
  expect(analyseBatches(q).method).toEqual({
    unit: 'batch-means',
    scale: 'plain',
    model: 'arm-and-block',
    adjustment: 'dunnett-product',
  })
  const without = analyseBatches({ ...q, readings: readings.map(({ block: _, ...row }) => row) })
  expect(without.method.model).toBe('arm')
  expect(without.warnings).toEqual(['no-blocks'])
})

test('a lost batch is left out, loaves may differ in number, and both are said', () => {
  const broken = analyseBatches({
    ...q,
    readings: readings.filter((row) => row.batch !== '2c' && !(row.batch === '1b' && row.loaf === '3')),
  })
  expect(broken.fit.residualDf).toBe(5)
  expect(broken.warnings).toEqual(['unequal-loaves'])
})

test('on the log scale effects come in per cent and do not depend on the unit', () => {
  const [one, two] = [readings, readings.map((row) => ({ ...row, value: row.value / 1000 }))].map((r) =>
    analyseBatches({ ...q, readings: r, scale: 'log' }),
  )
  expect(one!.pctComparisons![0]!.pct).toBeCloseTo(two!.pctComparisons![0]!.pct, 9)
  expect(one!.pctComparisons![0]!.lowPct!).toBeLessThan(one!.pctComparisons![0]!.pct)
  expect(() =>
    analyseBatches({ ...q, scale: 'log', readings: readings.map((row) => ({ ...row, value: row.value - 2500 })) }),
  ).toThrow('out-of-range')
})

test('one batch in an arm is a look only', () => {
  const look = readings.filter((row) => row.arm !== 'c' || row.block === '1')
  expect(() => analyseBatches({ ...q, readings: look })).toThrow('one-batch-in-arm')
})

test('single loaves give no loaf variation', () => {
  expect(analyseBatches({ ...q, readings: readings.filter((row) => row.loaf === '1') }).loafVariation).toBeNull()
})
