import fc from 'fast-check'
import { expect, test } from 'vitest'
import { binomialTail } from '@/lib/calc/distributions/binomial-tail'
import { acceptBatchContents } from '@/lib/calc/net-weight/accept-batch-contents'
import { acceptanceChance } from '@/lib/calc/net-weight/acceptance-chance'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'
import { rateCheck } from '@/tests/support/rate-check'

const anyPlan = fc.record({ batchPackages: fc.integer({ min: 100, max: 10_000 }), isDestructive: fc.boolean() })

test('a batch without a light package is always accepted, one of light packages alone never', () =>
  fc.assert(
    fc.property(anyPlan, (plan) => {
      expect(acceptanceChance({ ...plan, defectiveShare: 0 })).toMatchObject({ acceptedShare: 1, firstDecidesShare: 1 })
      expect(acceptanceChance({ ...plan, defectiveShare: 1 })).toMatchObject({ acceptedShare: 0, firstDecidesShare: 1 })
    }),
  ))

test('the more light packages, the smaller the chance, and never outside 0 to 1', () =>
  fc.assert(
    fc.property(
      anyPlan,
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (plan, one, other) => {
        const [few, many] = [Math.min(one, other), Math.max(one, other)].map(
          (defectiveShare) => acceptanceChance({ ...plan, defectiveShare }).acceptedShare,
        )
        expect(many).toBeLessThanOrEqual(few! + 1e-12)
        expect(many).toBeGreaterThanOrEqual(0)
        expect(few).toBeLessThanOrEqual(1 + 1e-12)
      },
    ),
  ))

test('with one sample it is the lower tail of the binomial', () => {
  for (const defectiveShare of [0.001, 0.03, 0.5, 0.9])
    expect(acceptanceChance({ batchPackages: 200, isDestructive: true, defectiveShare }).acceptedShare).toBeCloseTo(
      binomialTail({ k: 1, n: 20, share: defectiveShare, tail: 'lower' }),
      12,
    )
})

test.each([-0.01, 1.01, Number.NaN])('a share of %d is refused', (defectiveShare) =>
  expect(() => acceptanceChance({ batchPackages: 200, isDestructive: true, defectiveShare })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'defectiveShare' }) }),
  ),
)

/** Published plan, exact chance of at one light package in ten: the check itself, run on drawn packages, must refuse as often. */
for (const [what, batchPackages, isDestructive, stated] of [
  ['two samples of 30', 400, false, 1 - 0.27734],
  ['one sample of 20, opened', 400, true, 1 - 0.39175],
] as const) {
  rateCheck({
    what: `${what}: the inspector’s check refuses a batch with a tenth of light packages as often as is said`,
    stated,
    isExact: true,
    count() {
      const random = seededRandom(`acceptance ${what}`)
      const judge = (contentsG: readonly number[]) =>
        acceptBatchContents({ batchPackages, isDestructive, nominalG: 500, contentsG })
      const draw = (n: number) => Array.from({ length: n }, () => (random() < 0.1 ? 480 : 502))
      const trials = forLong(2000, 40_000)
      let wrong = 0
      for (let i = 0; i < trials; i++) {
        const contentsG = draw(isDestructive ? 20 : 30)
        const one = judge(contentsG)
        const last = one.nextPackages === null ? one : judge([...contentsG, ...draw(one.nextPackages)])
        if (last.outcome === 'refused') wrong++
      }
      return { trials, wrong }
    },
  })
}
