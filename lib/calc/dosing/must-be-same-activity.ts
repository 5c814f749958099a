import { CalcError } from '../error'
import type { Activity } from './types'

/**
 * Demands that two activities were found by one assay in one unit. Units of different assays cannot be converted:
 * substrate, temperature and pH differ. The way out is to dose by effect, with a ladder of doses baked.
 * @throws CalcError 'not-possible' with reason 'dose-by-effect'
 */
export function mustBeSameActivity(field: string, a: Activity, b: Activity): void {
  if (a.method !== b.method || a.unit !== b.unit) {
    throw new CalcError('not-possible', {
      field,
      value: `${a.method} ${a.unit} / ${b.method} ${b.unit}`,
      reason: 'dose-by-effect',
    })
  }
}
