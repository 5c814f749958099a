import { type CountForPower, countForPower } from './count-for-power'
import { mustBeSeeable } from './t-test-power'
import { type TwoArms, twoArmsPowerAt } from './two-arms-power'

/**
 * Doughs of each of two arms for a wanted power of the t test between them.
 * @param power wanted, 0.01 to 0.9999; @param difference not 0; the rest as in twoArmsPower
 * @returns smallest whole number, the continuous root, and the power there and with one fewer
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'power-out-of-reach'
 * Source: inversion of twoArmsPower.
 * @example twoArmsSize({ power: 0.9, difference: 1, sd: 1, alpha: 0.05, alternative: 'two-sided' }).count // 23
 */
export function twoArmsSize(q: TwoArms & { power: number }): CountForPower {
  mustBeSeeable('difference', q.difference, q.alternative)
  return countForPower({
    power: q.power,
    least: 2,
    powerAt: (countPerArm) => twoArmsPowerAt({ ...q, countPerArm }).power,
  })
}
