import { mustBeWithin } from '../checks'

/** Wetter than any batter: a figure above it is a slip. */
const WETTEST_PCT = 1000

/** Demands water on flour in %, 0 to 1000. @throws CalcError 'not-finite' | 'out-of-range' */
export function mustBeHydration(field: string, hydrationPct: number): number {
  return mustBeWithin(field, hydrationPct, { min: 0, max: WETTEST_PCT })
}
