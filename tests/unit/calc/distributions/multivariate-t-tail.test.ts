import { expect, test } from 'vitest'
import { dunnettTail } from '@/lib/calc/distributions/dunnett-tail'
import { multivariateTTail } from '@/lib/calc/distributions/multivariate-t-tail'

function correlationOf(loadings: number[]) {
  return loadings.map((a, i) => loadings.map((b, j) => (i === j ? 1 : a * b)))
}

test('where the correlation is a product it agrees with the exact integral', () => {
  const cases = [
    [0.7, 0.7, 0.7],
    [0.9, 0.5, 0.6, 0.8],
    [0.7, 0.7, 0.7, 0.7, 0.7, 0.7],
    [0.2, 0.95, 0.5],
  ]
  for (const loadings of cases) {
    for (const sides of ['one', 'two'] as const) {
      for (const df of [3, 12, 60]) {
        for (const c of [1, 2.2, 3.5]) {
          const exact = dunnettTail({ c, df, loadings, sides }).upper
          const { upper: got, errorEstimate } = multivariateTTail({
            c,
            df,
            correlation: correlationOf(loadings),
            sides,
          })
          expect(Math.abs(got - exact), JSON.stringify({ loadings, sides, df, c, exact, got })).toBeLessThan(1e-4)
          expect(errorEstimate).toBeLessThan(1e-4)
        }
      }
    }
  }
})

test('the same input gives the same number', () => {
  const q = { c: 2.5, df: 8, correlation: correlationOf([0.3, 0.8, 0.6]), sides: 'two' } as const
  expect(multivariateTTail(q)).toEqual(multivariateTTail(q))
})

test('bad input is refused at its field', () => {
  const q = { c: 2, df: 8, correlation: correlationOf([0.3, 0.8]), sides: 'two' } as const
  expect(() => multivariateTTail({ ...q, c: -1 })).toThrow('"c"')
  expect(() => multivariateTTail({ ...q, c: NaN })).toThrow('not-finite')
  expect(() => multivariateTTail({ ...q, df: -1 })).toThrow('"df"')

  expect(() =>
    multivariateTTail({
      c: 2,
      df: 8,
      correlation: [
        [1, 1],
        [1, 1],
      ],
      sides: 'two',
    }),
  ).toThrow('not-definite')
})
