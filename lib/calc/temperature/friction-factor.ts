import { CalcError } from '../error'
import { DOUGH_BOUNDS_C, KITCHEN_BOUNDS_C, TAP_BOUNDS_C } from './constants'
import { mustBeKitchenTemp } from './must-be-kitchen-temp'
import type { TemperatureUnit } from './temperature-reading'

/**
 * Friction factor learned from a dough that was mixed: n · actual − (room + flour + water + pre-ferment), with n 3, or 4
 * with a pre-ferment. It is n times a temperature rise.
 * @param unit that all are in; dough and pre-ferment 0 to 45 °C, room and flour 0 to 50 °C, water 0 to 60 °C, or the
 *   same in °F
 * @throws CalcError 'not-finite' | 'out-of-range', with reason 'units-mixed' where the other unit would fit;
 *   'not-possible' with reason 'friction-below-zero': mixing does not cool
 * Source: US pizza trade magazine, spring 2003; the inverse of waterTempByFactor.
 * @example actual 82 °F, room 75, flour 70, water 65: 36
 */
export function frictionFactor(q: {
  actualTemp: number
  roomTemp: number
  flourTemp: number
  waterTemp: number
  preFermentTemp: number | null
  unit: TemperatureUnit
}): number {
  const { unit } = q
  mustBeKitchenTemp('actualTemp', q.actualTemp, { unit, boundsC: DOUGH_BOUNDS_C })
  mustBeKitchenTemp('roomTemp', q.roomTemp, { unit, boundsC: KITCHEN_BOUNDS_C })
  mustBeKitchenTemp('flourTemp', q.flourTemp, { unit, boundsC: KITCHEN_BOUNDS_C })
  mustBeKitchenTemp('waterTemp', q.waterTemp, { unit, boundsC: TAP_BOUNDS_C })
  const rest = q.roomTemp + q.flourTemp + q.waterTemp
  const factor =
    q.preFermentTemp === null
      ? 3 * q.actualTemp - rest
      : 4 * q.actualTemp -
        rest -
        mustBeKitchenTemp('preFermentTemp', q.preFermentTemp, { unit, boundsC: DOUGH_BOUNDS_C })
  if (factor < 0)
    throw new CalcError('not-possible', { field: 'actualTemp', value: q.actualTemp, reason: 'friction-below-zero' })
  return factor
}
