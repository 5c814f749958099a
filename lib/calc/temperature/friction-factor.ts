import { mustBeWithin } from '../checks'

/**
 * Friction factor learned from a dough that was mixed: n · actual − (room + flour + water + pre-ferment), with n 3, or 4
 * with a pre-ferment. It is n times a temperature rise.
 * @param temperatures all in one unit, °C or °F
 * @throws CalcError 'not-finite'
 * Source: US pizza trade magazine, spring 2003; the inverse of waterTempByFactor.
 * @example actual 82 °F, room 75, flour 70, water 65: 36
 */
export function frictionFactor(q: {
  actualTemp: number
  roomTemp: number
  flourTemp: number
  waterTemp: number
  preFermentTemp: number | null
}): number {
  mustBeWithin('actualTemp', q.actualTemp)
  mustBeWithin('roomTemp', q.roomTemp)
  mustBeWithin('flourTemp', q.flourTemp)
  mustBeWithin('waterTemp', q.waterTemp)
  const rest = q.roomTemp + q.flourTemp + q.waterTemp
  if (q.preFermentTemp === null) return 3 * q.actualTemp - rest
  return 4 * q.actualTemp - rest - mustBeWithin('preFermentTemp', q.preFermentTemp)
}
