import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fromScreen, screenDigits, screenUnit, toScreen, toScreenText } from '@/lib/kitchen/calculators/on-screen'

test('a share is asked and answered as %, everything else in the unit that its name ends in', () => {
  expect([
    screenUnit('errorShare'),
    screenUnit('lossShares'),
    screenUnit('massG'),
    screenUnit('dosePctFlour'),
    screenUnit('df'),
  ]).toEqual(['Pct', 'Pct', 'G', 'PctFlour', undefined])
  expect([toScreen('errorShare', 0.07), toScreen('massG', 0.07), toScreen('lossPct', 7)]).toEqual([7, 0.07, 7])
  expect([fromScreen('lossShares', '12.5'), fromScreen('massG', '12.5')]).toEqual([0.125, 12.5])
})

test('any share is read from what is shown of it, to its last digit', () => {
  fc.assert(
    fc.property(
      fc.double({ noNaN: true, min: -10, max: 10 }).map((value) => value + 0),
      (value) => fromScreen('errorShare', toScreenText('errorShare', value)) === value,
    ),
  )
})

test('temperatures are shown in tenths', () =>
  expect([screenDigits('waterTempC'), screenDigits('massG')]).toEqual([{ decimals: 1 }, {}]))
