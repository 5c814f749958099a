import type { WeighingOfFormat1 } from './weighing-of-format-1.input'
import type { WeighingOfFormat2 } from './weighing-of-format-2.input'

/** What was entered of a line, whatever the format of its text. */
export type WeighingContent = Omit<WeighingOfFormat1, 'format'> & {
  /** What it was taken from; left out where that was not said. */
  lots?: WeighingOfFormat2['lots']
}

/**
 * What was entered of a line in its one text: canonical JSON (RFC 8785), as `textOfReading`. Of one that names no lots it
 * is the text of format 1, so that a device that knows of none and the book have the same hash.
 */
export function textOfWeighing({
  batch,
  how,
  ingredient,
  lots,
  mass,
  part,
  reason,
  stage,
  supersedes,
  takenAt,
  unit,
}: WeighingContent): string {
  // The keys stand in alphabetical order.
  if (lots === undefined)
    return JSON.stringify({
      batch,
      format: 1,
      how,
      ingredient,
      mass,
      part,
      reason,
      stage,
      supersedes,
      takenAt,
      unit,
    } satisfies WeighingOfFormat1)
  return JSON.stringify({
    batch,
    format: 2,
    how,
    ingredient,
    lots: lots.map(({ lot, mass: ofLot }) => ({ lot, mass: ofLot })),
    mass,
    part,
    reason,
    stage,
    supersedes,
    takenAt,
    unit,
  } satisfies WeighingOfFormat2)
}
