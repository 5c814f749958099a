import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { usLotCheck } from '@/lib/calc/net-weight/us-lot-check'

const judge = (contentsG: readonly number[], more: Partial<Parameters<typeof usLotCheck>[0]> = {}) =>
  usLotCheck({ lotPackages: 200, labelledG: 500, product: 'bread', contentsG, ...more })
const all = (n: number, contentG: number) => new Array<number>(n).fill(contentG)
const around = (meanG: number, n = 12) => Array.from({ length: n }, (_, i) => meanG + (i % 2 === 0 ? 4 : -4))

describe('the mean', () => {
  test('at the label, also without any spread, passes; below it without spread fails', () => {
    expect(judge(all(12, 500))).toMatchObject({ isMeanAccepted: true, isLotAccepted: true })
    expect(judge(all(12, 500.1), { labelledG: 500.1 }).isMeanAccepted).toBe(true)
    expect(judge(all(12, 499.9))).toMatchObject({ isMeanAccepted: false, isLotAccepted: false })
  })
  test('may be short by less than the sample error limit', () => {
    const { errorLimitG } = judge(around(500))
    expect(judge(around(500 - 0.99 * errorLimitG)).isMeanAccepted).toBe(true)
    expect(judge(around(500 - 1.01 * errorLimitG)).isMeanAccepted).toBe(false)
  })
  test('does not mend a package that is too short', () =>
    expect(judge([...all(11, 520), 478])).toMatchObject({
      isMeanAccepted: true,
      shortPackages: 1,
      isLotAccepted: false,
    }))
})

test('a package that is short by just what is allowed is not too short', () =>
  expect(judge([...all(11, 510), 500 - 21.7])).toMatchObject({
    shortageLimitG: 21.7,
    shortPackages: 0,
    isLotAccepted: true,
  }))

test('one too short is allowed in the largest lots only, two never', () => {
  const withShort = (n: number, short: number) => [...all(n - short, 510), ...all(short, 470)]
  expect(judge(withShort(48, 1), { lotPackages: 3201 }).isLotAccepted).toBe(true)
  expect(judge(withShort(48, 2), { lotPackages: 3201 }).isLotAccepted).toBe(false)
  expect(judge(withShort(24, 1), { lotPackages: 3200 }).isLotAccepted).toBe(false)
})

test('flour that dried out is allowed both limits wider, bread is not and is told so', () => {
  const flour = judge(around(488), { product: 'flour' })
  expect(flour).toMatchObject({
    dryingAllowanceG: 15,
    isMeanAccepted: true,
    cautions: expect.arrayContaining(['drying-out-since-packing']),
  })
  expect(flour.shortageLimitG).toBeCloseTo(36.7, 10)
  expect(judge(around(488))).toMatchObject({
    dryingAllowanceG: 0,
    isMeanAccepted: false,
    cautions: expect.arrayContaining(['no-drying-allowance-for-bread']),
  })
})

test('what is added to packages never turns a lot that passes into one that fails, where the spread stays', () =>
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 470, max: 530, noNaN: true }), { minLength: 12, maxLength: 12 }),
      fc.double({ min: 0, max: 50, noNaN: true }),
      (contentsG, moreG) => {
        fc.pre(judge(contentsG).isLotAccepted)
        expect(judge(contentsG.map((g) => g + moreG + 1e-6)).isLotAccepted).toBe(true)
      },
    ),
  ))

test('another number than the plan weighs is refused', () => {
  for (const [n, lotPackages] of [
    [11, 200],
    [13, 200],
    [12, 251],
    [24, 3201],
  ] as const)
    expect(() => judge(all(n, 500), { lotPackages })).toThrow(
      expect.objectContaining({
        facts: expect.objectContaining({ field: 'contentsG', reason: 'not-the-plans-sample' }),
      }),
    )
})
