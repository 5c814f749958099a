import { mustBeWithin } from '../checks'

/**
 * Water temperature by the bakers' factor method: n · wanted − (room + flour + pre-ferment + friction), with n 3, or 4
 * with a pre-ferment. The factor is a difference: between °F and °C it changes by 5/9 without the 32. Masses do not
 * enter, so the method holds for doughs like the one that the friction factor came from; requiredWaterTemp balances heat.
 * @param temperatures all in one unit, °C or °F
 * @param preFermentTemp null without a pre-ferment
 * @param frictionFactor n times the rise that mixing causes, in the same unit as a difference
 * @throws CalcError 'not-finite'
 * Source: US pizza trade magazine, June 2018; with pre-ferment Hamelman, Bread, 2004.
 * @example 80 °F wanted, room 75, flour 65, friction 35: 65 °F
 */
export function waterTempByFactor(q: {
  wantedTemp: number
  roomTemp: number
  flourTemp: number
  preFermentTemp: number | null
  frictionFactor: number
}): number {
  mustBeWithin('wantedTemp', q.wantedTemp)
  mustBeWithin('roomTemp', q.roomTemp)
  mustBeWithin('flourTemp', q.flourTemp)
  mustBeWithin('frictionFactor', q.frictionFactor)
  const rest = q.roomTemp + q.flourTemp + q.frictionFactor
  if (q.preFermentTemp === null) return 3 * q.wantedTemp - rest
  return 4 * q.wantedTemp - rest - mustBeWithin('preFermentTemp', q.preFermentTemp)
}
