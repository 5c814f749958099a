import { roundToResolutions } from '@/lib/calc/formula/round-to-resolutions'
import { publishedCheck } from '@/tests/support/published-check'

// Census of 1790 and A. Hamilton's 120 seats by largest remainders.
const states = [
  ['Virginia', 630_560, 21],
  ['Massachusetts', 475_327, 16],
  ['Pennsylvania', 432_879, 14],
  ['North Carolina', 353_523, 12],
  ['New York', 331_589, 11],
  ['Maryland', 278_514, 9],
  ['Connecticut', 236_841, 8],
  ['South Carolina', 206_236, 7],
  ['New Jersey', 179_570, 6],
  ['New Hampshire', 141_822, 5],
  ['Vermont', 85_533, 3],
  ['Georgia', 70_835, 2],
  ['Kentucky', 68_705, 2],
  ['Rhode Island', 68_446, 2],
  ['Delaware', 55_540, 2],
] as const
const all = states.reduce((sum, [, people]) => sum + people, 0)
const rounded = () =>
  roundToResolutions(states.map(([id, people]) => ({ id, massG: (120 * people) / all, resolutionG: 1 }))).lines

for (const [state, , seats] of states) {
  publishedCheck({
    of: ['formula/round-to-resolutions'],
    what: `120 seats by largest remainders: ${state}`,
    source:
      'M. L. Balinski and H. P. Young, Fair Representation, 1982, apportionment of 1792 by the method of Hamilton',
    status: 'from memory',
    expected: seats,
    got: () => rounded().find(({ id }) => id === state)?.massG ?? Number.NaN,
    tolerance: { absolute: 0 },
    why: 'whole seats',
  })
}
