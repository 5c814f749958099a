import fc from 'fast-check'
import { expect, test } from 'vitest'
import { payingDose } from '@/lib/calc/dose-response/paying-dose'
import { expectRefusal } from '@/tests/support/arm-rows'
import { aboutCurve, saturated, tenThousandDoses } from '@/tests/support/dose-rows'

const q = { confidence: 0.95, doseUnitPriceMinor: '6', gainUnitWorthMinor: '2' }
const rows = aboutCurve(saturated(100, 40, 1.5), 0.25)

test('at the dose, one more unit of it brings what it costs; a little less brings more, a little more brings less', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 9 }), (price, worth) => {
      const got = payingDose({
        ...q,
        rows,
        model: 'saturating',
        doseUnitPriceMinor: String(price),
        gainUnitWorthMinor: String(worth),
      })
      expect(got.neededGainPerDose).toBeCloseTo(price / worth, 12)
      if (got.outcome !== 'dose') return
      expect(got.gainPerDose!.estimate).toBeCloseTo(price / worth, 6)
      const netMinor = (dose: number) => worth * saturated(100, 40, 1.5)(dose) - price * dose
      const best = got.dose!.estimate
      expect(netMinor(best)).toBeGreaterThan(netMinor(best * 0.9))
      expect(netMinor(best)).toBeGreaterThan(netMinor(best * 1.1))
      expect(got.dose!.low).toBeLessThan(best)
      expect(got.dose!.high).toBeGreaterThan(best)
    }),
  )
})
test('where less is better, worth is negative and the dose is the same', () => {
  const there = payingDose({ ...q, rows, model: 'saturating' })
  const falling = rows.map(({ dose, y }) => ({ dose, y: 300 - y }))
  const back = payingDose({ ...q, rows: falling, model: 'saturating', gainUnitWorthMinor: '-2' })
  expect(back.dose!.estimate).toBeCloseTo(there.dose!.estimate, 6)
  expect(back.dose!.se).toBeCloseTo(there.dose!.se, 6)
  expect(payingDose({ ...q, rows: falling, model: 'saturating' }).outcome).toBe('nothing-pays')
})
test('what costs much pays not at all, what costs nothing as far as it was baked', () => {
  for (const model of ['saturating', 'quadratic', 'linear'] as const) {
    expect(payingDose({ ...q, rows, model, doseUnitPriceMinor: '900' })).toMatchObject({
      outcome: 'nothing-pays',
      dose: null,
    })
  }
  expect(payingDose({ ...q, rows, model: 'linear', doseUnitPriceMinor: '0' }).outcome).toBe('pays-as-far-as-baked')
  expect(payingDose({ ...q, rows, model: 'saturating', doseUnitPriceMinor: '0' }).outcome).toBe('pays-as-far-as-baked')
})
test('a curve that gains ever more is judged by the whole way', () => {
  const ever = aboutCurve((dose) => 100 + dose * dose, 0.25)
  expect(payingDose({ ...q, rows: ever, model: 'quadratic', doseUnitPriceMinor: '8' }).outcome).toBe(
    'pays-as-far-as-baked',
  )
  expect(payingDose({ ...q, rows: ever, model: 'quadratic', doseUnitPriceMinor: '30' }).outcome).toBe('nothing-pays')
})
test('where the gain may be more or less than the cost, it stays undecided', () => {
  expect(payingDose({ ...q, rows: aboutCurve((dose) => 100 + 3.1 * dose, 6), model: 'linear' })).toMatchObject({
    outcome: 'undecided',
    dose: null,
  })
})
test('no dose is said where no curve is claimed', () => {
  const got = payingDose({ ...q, rows: aboutCurve(saturated(100, 40, 1.5), 0.25, [0.5, 1, 2, 8]), model: 'saturating' })
  expect(got).toMatchObject({
    outcome: 'no-curve-claimed',
    dose: null,
    gainPerDose: null,
    notClaimed: ['no-zero-dose'],
  })
})
test('money is decimal text, a price is not negative and a gain is worth something', () => {
  const of = (doseUnitPriceMinor: string, gainUnitWorthMinor: string) => () =>
    payingDose({ ...q, rows, model: 'linear', doseUnitPriceMinor, gainUnitWorthMinor })
  expectRefusal(of('1e3', '2'), 'not-finite')
  expectRefusal(of('-1', '2'), 'out-of-range')
  expectRefusal(of('1', '0'), 'out-of-range', 'worth-nothing')
})
test('ten thousand values are no matter', () => {
  const got = payingDose({
    ...q,
    rows: tenThousandDoses,
    model: 'saturating',
    doseUnitPriceMinor: '40',
    gainUnitWorthMinor: '1',
  })
  expect(got.outcome).toBe('dose')
})
