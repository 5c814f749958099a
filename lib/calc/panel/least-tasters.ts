import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

export type LeastTasters = {
  /** Fewest that reach the wanted power. A few more may fall short of it again, because counts are whole. */
  tasters: number
  powerReached: number
  /** From this number on none of the next hundred falls short: the safer one to plan with, as some may not come. */
  steadyTasters: number
}

const AHEAD = 100
const MOST = 2000

/**
 * The number of tasters at which a power that goes up and down with it is reached, and from which it stays.
 * @param powerAt power with that many tasters; @param power wanted, 0 < power < 1
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'too-many-tasters' beyond 2000
 * Source: search; common practice, no source.
 */
export function leastTasters(q: { powerAt: (tasters: number) => number; power: number }): LeastTasters {
  const wanted = mustBeWithin('power', q.power, { over: 0, under: 1 })
  let [first, powerReached, lastShort] = [0, 0, 0]
  for (let tasters = 1; tasters <= MOST + AHEAD; tasters++) {
    const power = q.powerAt(tasters)
    if (power < wanted) lastShort = tasters
    else if (first === 0) [first, powerReached] = [tasters, power]
    if (tasters - lastShort === AHEAD) return { tasters: first, powerReached, steadyTasters: lastShort + 1 }
    if (lastShort === MOST) break
  }
  throw new CalcError('not-possible', { field: 'power', value: wanted, max: MOST, reason: 'too-many-tasters' })
}
