import { mustBeWithin } from '../checks'

/**
 * Corrects the friction of the doughs still to come from the first dough of a day, by one rule for all arms: what the
 * first dough is warmer than wanted came from heat that each kg of every dough will get too. So the rest is corrected
 * alike, and no arm gets a correction of its own, which would take out what the arm itself does to the temperature.
 * friction = used + (actual − wanted) · C/m
 * @param usedFrictionJPerKg what the first dough's water was worked out with
 * @param heatCapacityJPerK of the first dough and bowl (requiredWaterTemp gives it), > 0; doughMassG > 0
 * @param wantedDoughTempC, actualDoughTempC of the first dough, −5 to 60 °C
 * @returns J per kg; negative when the room takes out more than mixing brings
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: heat balance; the rule is our own.
 * @example 26 °C wanted, 27 °C got, 2.8 kJ/K in 1 kg: 2.8 kJ/kg more
 */
export function correctFrictionJPerKg(q: {
  usedFrictionJPerKg: number
  heatCapacityJPerK: number
  doughMassG: number
  wantedDoughTempC: number
  actualDoughTempC: number
}): number {
  mustBeWithin('usedFrictionJPerKg', q.usedFrictionJPerKg)
  mustBeWithin('heatCapacityJPerK', q.heatCapacityJPerK, { over: 0 })
  mustBeWithin('doughMassG', q.doughMassG, { over: 0 })
  mustBeWithin('wantedDoughTempC', q.wantedDoughTempC, { min: -5, max: 60 })
  mustBeWithin('actualDoughTempC', q.actualDoughTempC, { min: -5, max: 60 })
  const missedJ = (q.actualDoughTempC - q.wantedDoughTempC) * q.heatCapacityJPerK
  return mustBeWithin('usedFrictionJPerKg', q.usedFrictionJPerKg + missedJ / (q.doughMassG / 1000))
}
