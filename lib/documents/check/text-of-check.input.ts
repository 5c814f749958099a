import type { CheckOfFormat1 } from './check-of-format-1.input'
import type { CheckOfFormat2 } from './check-of-format-2.input'

/** What was entered of a check, whatever the format of its text. */
export type CheckContent = Omit<CheckOfFormat1, 'format'> & {
  /** Of a volume gauge; left out where none was named. */
  block?: CheckOfFormat2['block']
}

/**
 * A check in its one text: canonical JSON (RFC 8785), as `textOfReading`. Of one that names no block it is the text of
 * format 1, so that a device that knows of none and the book have the same hash.
 */
export function textOfCheck({ block, clockAheadS, equipment, mass, shown, takenAt, unit }: CheckContent): string {
  // The keys stand in alphabetical order.
  if (block === undefined)
    return JSON.stringify({ clockAheadS, equipment, format: 1, mass, shown, takenAt, unit } satisfies CheckOfFormat1)
  return JSON.stringify({
    block,
    clockAheadS,
    equipment,
    format: 2,
    mass,
    shown,
    takenAt,
    unit,
  } satisfies CheckOfFormat2)
}
