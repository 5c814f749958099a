import { mustBeWithin } from '../checks'
import { type SeveralArms, anovaPowerAt } from './anova-power'
import { type CountForPower, countForPower } from './count-for-power'

/**
 * Doughs of each arm for a wanted power of the F test.
 * @param power wanted, 0.01 to 0.9999; @param means not all the same; the rest as in anovaPower
 * @returns smallest whole number, the continuous root, the power there and with one fewer, effect size f
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty'; 'not-possible' with reason 'power-out-of-reach'
 * Source: inversion of anovaPower.
 * @example anovaSize({ power: 0.8, means: [-1.2247, 0, 0, 1.2247], sd: 1.7321, alpha: 0.05 }).count // 12
 */
export function anovaSize(q: SeveralArms & { power: number }): CountForPower & { effectSize: number } {
  const { effectSize } = anovaPowerAt({ ...q, countPerArm: 2 })
  // below this 10,000 doughs show nothing
  mustBeWithin('means', effectSize, { min: 1e-3 })
  const found = countForPower({
    power: q.power,
    least: 2,
    powerAt: (countPerArm) => anovaPowerAt({ ...q, countPerArm }).power,
  })
  return { ...found, effectSize }
}
