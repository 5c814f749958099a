import { textOfCheck } from '../../documents/check/text-of-check.input'
import type { CheckEntry } from './log-check.input'

/** What a check's hash is of: everything that was entered but its id. */
export function checkContentText({ clockAheadS, equipmentId, mass, shown, takenAt, unit }: CheckEntry): string {
  return textOfCheck({
    clockAheadS: clockAheadS ?? null,
    equipment: equipmentId,
    mass: mass ?? null,
    shown,
    takenAt,
    unit,
  })
}
