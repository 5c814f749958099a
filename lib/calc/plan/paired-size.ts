import { type CountForPower, countForPower } from './count-for-power'
import { type PairedArms, pairedPowerAt } from './paired-power'
import { mustBeSeeable } from './t-test-power'

/**
 * Mixing days with both arms side by side for a wanted power of the paired t test.
 * @param power wanted, 0.01 to 0.9999; @param difference not 0; the rest as in pairedPower
 * @returns smallest whole number, the continuous root, and the power there and with one fewer
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'power-out-of-reach'
 * Source: inversion of pairedPower.
 * @example pairedSize({ power: 0.8, difference: 40, sdOfDifferences: 40, alpha: 0.05, alternative: 'two-sided' }).count // 10
 */
export function pairedSize(q: PairedArms & { power: number }): CountForPower {
  mustBeSeeable('difference', q.difference, q.alternative)
  return countForPower({ power: q.power, least: 2, powerAt: (pairs) => pairedPowerAt({ ...q, pairs }).power })
}
