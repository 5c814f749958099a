import { expect, test } from 'vitest'
import { judgeLot } from '@/lib/calc/net-weight/judge-lot'

const nominalG = 800
const full = (n: number) => new Array<number>(n).fill(802)

test('a lot at its weight keeps all three rules', () =>
  expect(judgeLot({ nominalG, contentsG: [...full(39), 784] })).toMatchObject({
    belowLower: 1,
    belowLowerShare: 0.025,
    keepsAllRules: true,
    cautions: ['package-differs-by-country', 'competent-person-checks'],
  }))

test.each([
  ['a mean below nominal', new Array<number>(20).fill(799.9), { isMeanEnough: false, areFewBelowLower: true }],
  ['more than 2.5 % below the first limit', [...full(30), 784.9], { isMeanEnough: true, areFewBelowLower: false }],
  ['one below the second limit', [...full(99), 769.9], { areFewBelowLower: true, areNoneBelowAbsolute: false }],
])('%s breaks the lot', (_what, contentsG, found) =>
  expect(judgeLot({ nominalG, contentsG })).toMatchObject({ ...found, keepsAllRules: false }),
)

test('a package just at a limit is not below it', () =>
  expect(judgeLot({ nominalG, contentsG: [...full(10), 785, 770] })).toMatchObject({ belowLower: 1, belowAbsolute: 0 }))

test('an empty lot is refused', () =>
  expect(() => judgeLot({ nominalG, contentsG: [] })).toThrow(expect.objectContaining({ code: 'empty' })))
