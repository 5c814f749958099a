import { textOfCheck } from '../../documents/check/text-of-check.input'
import type { CheckEntry } from './log-check.input'

/** What a check's hash is of: everything that was entered but its id. */
export function checkContentText({ block, clockAheadS, equipmentId, mass, shown, takenAt, unit }: CheckEntry): string {
  return textOfCheck({
    ...(block === null || block === undefined ? {} : { block }),
    clockAheadS: clockAheadS ?? null,
    equipment: equipmentId,
    mass: mass ?? null,
    shown,
    takenAt,
    unit,
  })
}
