import { mustBeWithin } from '../checks'
import { bracketedRoot } from '../distributions/bracketed-root'
import { CalcError } from '../error'

export type CountForPower = {
  /** Smallest whole number that reaches the wanted power. */
  count: number
  /** Where the power is met exactly; null when the least number has it already. */
  countContinuous: number | null
  /** Power at `count`, and at one fewer (null below the least). */
  power: number
  powerOneFewer: number | null
}

const MOST = 10_000

/**
 * How many it takes for a wanted power.
 * @param powerAt power as a function of the number, also between whole ones, growing; @param power wanted, 0.01 to 0.9999
 * @param least smallest number that leaves a spread to judge by
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'power-out-of-reach' where 10,000 are too few
 * Source: root search, see bracketedRoot; the same definition as in R's power.t.test.
 */
export function countForPower(q: { powerAt: (count: number) => number; power: number; least: number }): CountForPower {
  const wanted = mustBeWithin('power', q.power, { min: 0.01, max: 0.9999 })
  const atLeast = q.powerAt(q.least)
  if (atLeast >= wanted) return { count: q.least, countContinuous: null, power: atLeast, powerOneFewer: null }
  let [low, high] = [q.least, q.least * 2]
  while (q.powerAt(high) < wanted) {
    if (high >= MOST)
      throw new CalcError('not-possible', {
        field: 'power',
        value: q.powerAt(MOST),
        max: MOST,
        reason: 'power-out-of-reach',
      })
    ;[low, high] = [high, Math.min(MOST, high * 2)]
  }
  const countContinuous = bracketedRoot({ f: (count) => q.powerAt(count) - wanted, low, high, tolerance: 1e-10 })
  const above = Math.ceil(countContinuous)
  // a root a rounding error above a whole number
  const count = above - 1 >= q.least && q.powerAt(above - 1) >= wanted ? above - 1 : above
  return {
    count,
    countContinuous,
    power: q.powerAt(count),
    powerOneFewer: count > q.least ? q.powerAt(count - 1) : null,
  }
}
