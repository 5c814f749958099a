import { firmnessAt } from '@/lib/calc/staling/firmness-at'
import { rateAtTemperature } from '@/lib/calc/staling/rate-at-temperature'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'H. McGee, On Food and Cooking: bread at 7 °C staled in one day as much as in six at 30 °C'
/** Six times over 23 °C. */
const timesPer10Colder = 6 ** (10 / 23)
const rateAt = (otherTempC: number) => rateAtTemperature({ ratePerDay: 0.25, tempC: 20, otherTempC, timesPer10Colder })
const firm = (tempC: number) => firmnessAt({ startFirmness: 2, endFirmness: 10, ratePerDay: rateAt(tempC), days: 2 })

publishedCheck({
  id: 'Q-7.1',
  of: ['staling/rate-at-temperature'],
  what: 'with 2.17935 times for each 10 °C colder, 7 °C is so many times as fast as 30 °C',
  source,
  status: 'published; factor worked',
  expected: 6,
  got: () => rateAtTemperature({ ratePerDay: 1, tempC: 30, otherTempC: 7, timesPer10Colder: 2.17935 }),
  tolerance: { relative: 1e-5 },
  why: 'the factor is given to five decimals',
})
for (const [id, of, what, expected, got] of [
  ['Q-7.2', 'staling/rate-at-temperature', 'k 0.25 a day at 20 °C, at 5 °C', 0.80432, () => rateAt(5)],
  ['Q-7.2', 'staling/rate-at-temperature', 'k 0.25 a day at 20 °C, at 30 °C', 0.11471, () => rateAt(30)],
  ['Q-7.2', 'staling/firmness-at', 'from 2 towards 10, two days at 20 °C', 5.1478, () => firm(20)],
  ['Q-7.2', 'staling/firmness-at', 'from 2 towards 10, two days at 5 °C', 8.3987, () => firm(5)],
] as const) {
  publishedCheck({
    id,
    of: [of],
    what,
    source,
    status: 'published inputs',
    expected,
    got,
    tolerance: { relative: 5e-5 },
    why: 'worked to five digits',
  })
}
