import { mustBeWithin } from '../checks'

export type DoughHeatWarning = 'friction-below-zero' | 'looks-like-fahrenheit'

/** A part this hot is a scald or a soaker; of flour it is more often a reading in °F. */
const HOTTEST_USUAL_C = 50

/**
 * What looks wrong in a dough's heat: mixing that took heat out, and a part so hot that its reading may be in °F.
 * @param friction of any unit; partTempsC temperatures of what goes in
 * @throws CalcError 'not-finite'
 */
export function doughHeatWarnings(q: { friction: number; partTempsC: readonly number[] }): DoughHeatWarning[] {
  mustBeWithin('friction', q.friction)
  const isHot = q.partTempsC.some((tempC, i) => mustBeWithin(`partTempsC[${i}]`, tempC) > HOTTEST_USUAL_C)
  return [
    ...(q.friction < 0 ? (['friction-below-zero'] as const) : []),
    ...(isHot ? (['looks-like-fahrenheit'] as const) : []),
  ]
}
