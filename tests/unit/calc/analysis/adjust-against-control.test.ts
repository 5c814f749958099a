import { expect, test } from 'vitest'
import { adjustAgainstControl } from '@/lib/calc/analysis/adjust-against-control'
import { tTail } from '@/lib/calc/distributions/t-tail'
import { findEntry } from '@/lib/calc/catalogue'

const half = [
  [1, 0.5, 0.5],
  [0.5, 1, 0.5],
  [0.5, 0.5, 1],
]
const differences = [
  { arm: 'b', estimate: 3, se: 1 },
  { arm: 'c', estimate: -1, se: 1 },
  { arm: 'd', estimate: 0.2, se: 2 },
]
const q = { differences, correlation: half, df: 9, confidence: 0.95, alternative: 'two-sided' } as const

test('p falls below the level exactly when the interval leaves zero out', () => {
  for (let estimate = 2; estimate < 4; estimate += 0.05) {
    const { comparisons } = adjustAgainstControl({
      ...q,
      differences: [{ arm: 'b', estimate, se: 1 }, ...differences.slice(1)],
    })
    expect(comparisons[0]!.pAdjusted < 0.05).toBe(comparisons[0]!.low! > 0)
  }
})

test('the adjusted p lies between the plain p and Bonferroni', () => {
  for (const row of adjustAgainstControl(q).comparisons) {
    const plain = 2 * tTail({ t: Math.abs(row.t), df: 9, tail: 'upper' })
    expect(row.pAdjusted).toBeGreaterThan(plain)
    expect(row.pAdjusted).toBeLessThanOrEqual(Math.min(1, 3 * plain))
  }
})

test('one arm is the t test, and says so', () => {
  const one = adjustAgainstControl({ ...q, differences: [{ arm: 'b', estimate: 3, se: 1 }], correlation: [[1]] })
  expect(one.method).toBe('student-t')
  expect(one.comparisons[0]!.pAdjusted).toBeCloseTo(2 * tTail({ t: 3, df: 9, tail: 'upper' }), 10)
})

test('one-sided alternatives leave one side open and mirror each other', () => {
  const greater = adjustAgainstControl({ ...q, alternative: 'greater' })
  const less = adjustAgainstControl({
    ...q,
    alternative: 'less',
    differences: differences.map((d) => ({ ...d, estimate: -d.estimate })),
  })
  greater.comparisons.forEach((row, i) => {
    expect(row.high).toBeNull()
    expect(less.comparisons[i]!.low).toBeNull()
    expect(less.comparisons[i]!.high).toBeCloseTo(-row.low!, 12)
    expect(less.comparisons[i]!.pAdjusted).toBeCloseTo(row.pAdjusted, 12)
  })
})

test('a correlation of broken blocks goes through the lattice and stays near the product result', () => {
  const broken = [
    [1, 0.5, 0.52, 0.46],
    [0.5, 1, 0.52, 0.5],
    [0.52, 0.52, 1, 0.5],
    [0.46, 0.5, 0.5, 1],
  ]
  const four = [...differences, { arm: 'e', estimate: 2, se: 1 }]
  const lattice = adjustAgainstControl({ ...q, differences: four, correlation: broken })
  const product = adjustAgainstControl({
    ...q,
    differences: four,
    correlation: broken.map((row, i) => row.map((_, j) => (i === j ? 1 : 0.5))),
  })
  expect([lattice.method, product.method]).toEqual(['dunnett-lattice', 'dunnett-product'])
  expect(Math.abs(lattice.criticalValue - product.criticalValue)).toBeLessThan(0.02)
  expect(lattice.probabilityError).toBeGreaterThan(0)
  expect(lattice.probabilityError).toBeLessThan(1e-4)
  expect(product.probabilityError).toBeLessThan(1e-9)
})

test('of contrasts with degrees of freedom of their own the smallest holds for all, and each row keeps its own', () => {
  const own = adjustAgainstControl({ ...q, df: [12.5, 7, 30] })
  const smallest = adjustAgainstControl({ ...q, df: 7 })
  expect(own.df).toBe(7)
  expect(own.criticalValue).toBe(smallest.criticalValue)
  expect(own.comparisons.map(({ pAdjusted }) => pAdjusted)).toEqual(
    smallest.comparisons.map(({ pAdjusted }) => pAdjusted),
  )
  expect(own.comparisons.map(({ df }) => df)).toEqual([12.5, 7, 30])
  expect(() => adjustAgainstControl({ ...q, df: [9, 9] })).toThrow('wrong-shape')
  expect(() => adjustAgainstControl({ ...q, df: [9, NaN, 9] })).toThrow('"df[1]"')
})

test('a standard error of zero is refused', () => {
  expect(() =>
    adjustAgainstControl({ ...q, differences: [{ arm: 'b', estimate: 3, se: 0 }], correlation: [[1]] }),
  ).toThrow('out-of-range')
})

test('the catalogue gives the error of the adjusted p values wherever it gives them', () => {
  const errorOf = (id: string, question: object) =>
    (findEntry(id)!.run(question as never) as { probabilityError: number }).probabilityError
  for (const id of [
    'analysis/adjust-against-control',
    'analysis/analyse-batches',
    'mixed-model/compare-mixed-model-arms',
  ]) {
    expect(errorOf(id, findEntry(id)!.example)).toBeLessThanOrEqual(1e-10)
  }
  // arms that each lack other days: the correlation is no product, so the lattice is at work
  const readings = ['control', 'B', 'C', 'D', 'E'].flatMap((arm, i) =>
    [1, 2, 3, 4, 5]
      .filter((day) => i === 0 || (day !== i && day !== (i % 2) + 4))
      .map((day) => ({
        arm,
        block: `day ${day}`,
        batch: `${arm} ${day}`,
        loaf: '1',
        value: 100 + 7 * i + 3 * day + ((i * day * 5) % 7),
      })),
  )
  const error = errorOf('analysis/analyse-batches', {
    readings,
    control: 'control',
    confidence: 0.95,
    alternative: 'two-sided',
    scale: 'plain',
  })
  expect(error).toBeGreaterThan(1e-10)
  expect(error).toBeLessThan(1e-4)
})
