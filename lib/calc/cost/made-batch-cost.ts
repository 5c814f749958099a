import { mustBeWithin } from '../checks'
import type { Decimal } from './decimal'
import { mustBeAmount } from './must-be-amount'

export type MadeBatchCost = { labourMinor: Decimal; energyMinor: Decimal; totalMinor: Decimal }

/**
 * Cost of a batch with the work and the energy that go into it: ingredients + minutes · wage / 60 + kWh · price.
 * Rent, wear and what is not sold are not in it.
 * @param ingredientsMinor minor units, ≥ 0
 * @param workMin minutes of people's work on the batch, 0 to 1e5; @param wagePerHourMinor with all that is paid on top, ≥ 0
 * @param energyKwh kWh, 0 to 1e6; @param pricePerKwhMinor ≥ 0
 * @returns minor units, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition of direct cost; common practice, no source.
 * @example 3120 cents, 40 min at 2100 cents an hour, 9 kWh at 32 cents: 3120 + 1400 + 288 = 4808 cents
 */
export function madeBatchCost(q: {
  ingredientsMinor: Decimal
  workMin: number
  wagePerHourMinor: Decimal
  energyKwh: number
  pricePerKwhMinor: Decimal
}): MadeBatchCost {
  mustBeAmount('ingredientsMinor', q.ingredientsMinor)
  mustBeWithin('workMin', q.workMin, { min: 0, max: 1e5 })
  mustBeAmount('wagePerHourMinor', q.wagePerHourMinor)
  mustBeWithin('energyKwh', q.energyKwh, { min: 0, max: 1e6 })
  mustBeAmount('pricePerKwhMinor', q.pricePerKwhMinor)
  const labourMinor = q.wagePerHourMinor.times(q.workMin).dividedBy(60)
  const energyMinor = q.pricePerKwhMinor.times(q.energyKwh)
  return { labourMinor, energyMinor, totalMinor: q.ingredientsMinor.plus(labourMinor).plus(energyMinor) }
}
