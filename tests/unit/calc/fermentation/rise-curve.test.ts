import fc from 'fast-check'
import { expect, test } from 'vitest'
import { riseAt } from '@/lib/calc/fermentation/rise-curve'

const kind = fc.constantFrom('gompertz', 'logistic')
const curve = { mostRisePct: 120, steepestPctPerMin: 1.5, lagMin: 20 }

test.each(['gompertz', 'logistic'] as const)(
  '%s ends at the most rise and is never steeper than its steepest slope',
  (one) => {
    expect(riseAt({ kind: one, ...curve, atMin: 1000 }).risePct).toBeCloseTo(120, 6)
    expect(riseAt({ kind: one, ...curve, atMin: -1e5 })).toEqual({
      risePct: 0,
      gradient: [0, expect.anything(), expect.anything()],
    })
    let steepest = 0
    for (let t = 0; t < 200; t += 0.01) {
      const slope =
        (riseAt({ kind: one, ...curve, atMin: t + 0.01 }).risePct - riseAt({ kind: one, ...curve, atMin: t }).risePct) /
        0.01
      steepest = Math.max(steepest, slope)
    }
    expect(steepest).toBeCloseTo(1.5, 4)
  },
)

test('the slopes are those of the curve, by small differences', () =>
  fc.assert(
    fc.property(
      kind,
      fc.double({ min: 20, max: 200, noNaN: true }),
      fc.double({ min: 0.2, max: 4, noNaN: true }),
      fc.double({ min: -20, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 200, noNaN: true }),
      (one, mostRisePct, steepestPctPerMin, lagMin, atMin) => {
        const q = { kind: one, mostRisePct, steepestPctPerMin, lagMin, atMin }
        const { gradient } = riseAt(q)
        const parameters = ['mostRisePct', 'steepestPctPerMin', 'lagMin'] as const
        parameters.forEach((name, j) => {
          const h = 1e-5 * Math.max(1, Math.abs(q[name]))
          const up = riseAt({ ...q, [name]: q[name] + h }).risePct
          const down = riseAt({ ...q, [name]: q[name] - h }).risePct
          expect(gradient[j]).toBeCloseTo((up - down) / (2 * h), 4)
        })
      },
    ),
  ))

test('no rise, no slope and no number are refused', () => {
  expect(() => riseAt({ kind: 'gompertz', ...curve, mostRisePct: 0, atMin: 1 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'mostRisePct' }) }),
  )
  expect(() => riseAt({ kind: 'logistic', ...curve, atMin: Number.NaN })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
})
