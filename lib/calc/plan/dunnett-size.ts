import { mustHaveAtLeast } from '../checks'
import { type CountForPower, countForPower } from './count-for-power'
import { type ArmsAgainstControl, dunnettPowerAt } from './dunnett-power'
import { mustBeSeeable } from './t-test-power'

/**
 * Doughs of each arm and of the control, as many of one as of the other, for a wanted power of Dunnett's comparison.
 * @param power wanted, 0.01 to 0.9999; @param goal `each`: every arm by itself has that chance; `any`: at least one is seen
 * @param differences not 0, or for `any` not all of them; the rest as in dunnettPower
 * @returns smallest whole number, the continuous root, and the power there and with one fewer
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty'; 'not-possible' with reason 'power-out-of-reach'
 * Source: inversion of dunnettPower.
 * @example dunnettSize({ power: 0.8, goal: 'any', differences: [80, 40], sd: 50, alpha: 0.05, alternative: 'two-sided' }).count // 9
 */
export function dunnettSize(q: ArmsAgainstControl & { power: number; goal: 'each' | 'any' }): CountForPower {
  mustHaveAtLeast('differences', q.differences, 1)
  const towards = (difference: number) =>
    q.alternative === 'two-sided' ? Math.abs(difference) : q.alternative === 'greater' ? difference : -difference
  const largest = q.differences.reduce((a, b) => (towards(b) > towards(a) ? b : a))
  q.differences.forEach((difference, i) => {
    if (q.goal === 'each' || difference === largest) mustBeSeeable(`differences[${i}]`, difference, q.alternative)
  })
  const powerAt = (count: number) => {
    const { powerEach, powerAny } = dunnettPowerAt({ ...q, controlCount: count, armCount: count })
    return q.goal === 'any' ? powerAny() : Math.min(...powerEach())
  }
  return countForPower({ power: q.power, least: 2, powerAt })
}
