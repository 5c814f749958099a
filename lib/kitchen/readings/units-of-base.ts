import 'server-only'
import { unitFactors } from './unit-factors'

/** Units in which a measure of this base unit may be entered, the base unit first; a unit of the bakery's own stands alone. */
export function unitsOfBase(baseUnit: string): readonly string[] {
  const factors = unitFactors[baseUnit]
  return factors ? Object.keys(factors) : [baseUnit]
}
