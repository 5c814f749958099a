import { mustBeWithin } from '../checks'
import { DOUGH_BOUNDS_C, KITCHEN_BOUNDS_C, MOST_FRICTION_FACTOR_C } from './constants'
import { mustBeKitchenTemp } from './must-be-kitchen-temp'
import type { TemperatureUnit } from './temperature-reading'

/**
 * Water temperature by the bakers' factor method: n · wanted − (room + flour + pre-ferment + friction), with n 3, or 4
 * with a pre-ferment. The factor is a difference: between °F and °C it changes by 5/9 without the 32. Masses do not
 * enter, so the method holds for doughs like the one that the friction factor came from; requiredWaterTemp balances heat.
 * @param unit that all are in; dough and pre-ferment 0 to 45 °C, room and flour 0 to 50 °C, or the same in °F
 * @param preFermentTemp null without a pre-ferment
 * @param frictionFactor n times the rise that mixing causes, in the same unit as a difference; 0 to 160 °C or 288 °F
 * @returns in the unit; below freezing or above 45 °C it is for waterAdvice to say what that means
 * @throws CalcError 'not-finite' | 'out-of-range', with reason 'units-mixed' where the other unit would fit
 * Source: US pizza trade magazine, June 2018; with pre-ferment Hamelman, Bread, 2004.
 * @example 80 °F wanted, room 75, flour 65, friction 35: 65 °F
 */
export function waterTempByFactor(q: {
  wantedTemp: number
  roomTemp: number
  flourTemp: number
  preFermentTemp: number | null
  frictionFactor: number
  unit: TemperatureUnit
}): number {
  const { unit } = q
  mustBeKitchenTemp('wantedTemp', q.wantedTemp, { unit, boundsC: DOUGH_BOUNDS_C })
  mustBeKitchenTemp('roomTemp', q.roomTemp, { unit, boundsC: KITCHEN_BOUNDS_C })
  mustBeKitchenTemp('flourTemp', q.flourTemp, { unit, boundsC: KITCHEN_BOUNDS_C })
  mustBeWithin('frictionFactor', q.frictionFactor, {
    min: 0,
    max: unit === 'celsius' ? MOST_FRICTION_FACTOR_C : (MOST_FRICTION_FACTOR_C * 9) / 5,
  })
  const rest = q.roomTemp + q.flourTemp + q.frictionFactor
  if (q.preFermentTemp === null) return 3 * q.wantedTemp - rest
  return (
    4 * q.wantedTemp - rest - mustBeKitchenTemp('preFermentTemp', q.preFermentTemp, { unit, boundsC: DOUGH_BOUNDS_C })
  )
}
