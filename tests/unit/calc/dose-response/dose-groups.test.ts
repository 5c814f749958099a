import { expect, test } from 'vitest'
import { doseGroups } from '@/lib/calc/dose-response/dose-groups'
import { expectRefusal } from '@/tests/support/arm-rows'

test('values of one dose are one group, by dose, with the spread inside them apart', () => {
  const got = doseGroups([
    { dose: 2, y: 10 },
    { dose: 0, y: 4 },
    { dose: 2, y: 14 },
    { dose: 0, y: 4 },
  ])
  expect(got.groups).toEqual([
    { dose: 0, count: 2, offset: -6 },
    { dose: 2, count: 2, offset: 2 },
  ])
  expect(got).toMatchObject({ origin: 10, count: 4, largest: 14, pureError: { sumSquares: 8, df: 2 } })
})
test('a negative dose, no dose at all and what is no number are refused', () => {
  expectRefusal(() => doseGroups([]), 'empty')
  expectRefusal(() => doseGroups([{ dose: -1, y: 1 }]), 'out-of-range')
  expectRefusal(
    () =>
      doseGroups([
        { dose: 0, y: 1 },
        { dose: 0, y: 2 },
      ]),
    'out-of-range',
  )
  expectRefusal(() => doseGroups([{ dose: NaN, y: 1 }]), 'not-finite')
  expectRefusal(() => doseGroups([{ dose: 1, y: Infinity }]), 'not-finite')
})
