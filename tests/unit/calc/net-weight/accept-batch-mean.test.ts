import fc from 'fast-check'
import { expect, test } from 'vitest'
import { acceptBatchMean } from '@/lib/calc/net-weight/accept-batch-mean'

/** As many packages as the plan weighs of such a batch. */
const plans = [
  { batchPackages: 100, isDestructive: false, packages: 30 },
  { batchPackages: 500, isDestructive: false, packages: 30 },
  { batchPackages: 501, isDestructive: false, packages: 50 },
  { batchPackages: 10_000, isDestructive: false, packages: 50 },
  { batchPackages: 400, isDestructive: true, packages: 20 },
] as const
const judge = (contentsG: readonly number[], nominalG = 500) =>
  acceptBatchMean({ batchPackages: 400, isDestructive: true, nominalG, contentsG })
const around = (meanG: number, n = 20) => Array.from({ length: n }, (_, i) => meanG + (i % 2 === 0 ? 3 : -3))

test('a batch at nominal is accepted when its packages differ, and one far below is not', () => {
  expect(judge(around(500)).isAccepted).toBe(true)
  expect(judge(around(495)).isAccepted).toBe(false)
})

test('packages that all hold just what is marked are accepted', () =>
  expect(judge(new Array<number>(20).fill(500.1), 500.1)).toMatchObject({
    sdG: expect.closeTo(0, 9),
    isMeanAccepted: true,
    isAccepted: true,
  }))

test('it scales with the contents', () =>
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 480, max: 520, noNaN: true }), { minLength: 20, maxLength: 20 }),
      (contentsG) => {
        const one = judge(contentsG)
        const twice = judge(
          contentsG.map((g) => 2 * g),
          1000,
        )
        expect(twice.meanG).toBeCloseTo(2 * one.meanG, 8)
        expect(twice.leastMeanG).toBeCloseTo(2 * one.leastMeanG, 8)
      },
    ),
  ))

test.each(plans)(
  'of $batchPackages packages (opened: $isDestructive) it takes the plan’s $packages and no other number',
  ({ packages, ...plan }) => {
    expect(acceptBatchMean({ ...plan, nominalG: 500, contentsG: around(500, packages) }).factor).toBeGreaterThan(0)
    for (const n of [0, 1, 2, 10, packages - 1, packages + 1, 80]) {
      expect(() => acceptBatchMean({ ...plan, nominalG: 500, contentsG: around(500, n) }), `${n}`).toThrow(
        expect.objectContaining({
          code: 'wrong-shape',
          facts: expect.objectContaining({
            field: 'contentsG',
            value: n,
            min: packages,
            reason: 'not-the-plans-sample',
          }),
        }),
      )
    }
  },
)

test('of fewer than 100 each is weighed, so there is no test of a sample', () =>
  expect(() =>
    acceptBatchMean({ batchPackages: 99, isDestructive: false, nominalG: 500, contentsG: around(500, 99) }),
  ).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'batchPackages', reason: 'all-are-weighed' }) }),
  ))

test('the other half of the test is spoken of', () =>
  expect(judge(around(500)).cautions).toContain('other-half-of-the-test'))

test('an empty package among twenty is refused although the mean would pass', () =>
  expect(judge([...new Array<number>(19).fill(505), 0])).toMatchObject({
    isMeanAccepted: true,
    belowLower: 1,
    belowAbsolute: 1,
    isAccepted: false,
    cautions: expect.arrayContaining(['light-package-not-for-sale']),
  }))
