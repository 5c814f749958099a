import { type BatchedArms, batchesPowerAt } from './batches-power'
import { type CountForPower, countForPower } from './count-for-power'
import { mustBeSeeable } from './t-test-power'

/**
 * Batches of each of two arms for a wanted power of the t test of batch means.
 * @param power wanted, 0.01 to 0.9999; @param difference not 0; the rest as in batchesPower
 * @returns smallest whole number, the continuous root, and the power there and with one fewer
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'power-out-of-reach'
 * Source: inversion of batchesPower.
 * @example batchesSize({ power: 0.8, loavesPerBatch: 3, batchSd: 40, loafSd: 30, difference: 100, alpha: 0.05, alternative: 'two-sided' }).count // 5
 */
export function batchesSize(q: BatchedArms & { power: number }): CountForPower {
  mustBeSeeable('difference', q.difference, q.alternative)
  return countForPower({
    power: q.power,
    least: 2,
    powerAt: (batchesPerArm) => batchesPowerAt({ ...q, batchesPerArm }).power,
  })
}
