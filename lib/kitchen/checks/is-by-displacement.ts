import 'server-only'
import { seedDisplacement } from '../stores/standard-measures'

/** Whether a measure is a volume that a gauge shows: in mL, and by the method that loaf volume has in every bakery. */
export function isByDisplacement({ unit, method }: { unit: string; method: string }): boolean {
  return unit === 'mL' && method.trim().toLowerCase() === seedDisplacement
}
