import type { WeighingOfFormat1 } from './weighing-of-format-1.input'

/** What was entered of a line, whatever the format of its text. */
export type WeighingContent = Omit<WeighingOfFormat1, 'format'>

/** What was entered of a line in its one text: canonical JSON (RFC 8785), as `textOfReading`. */
export function textOfWeighing({
  batch,
  how,
  ingredient,
  mass,
  part,
  reason,
  stage,
  supersedes,
  takenAt,
  unit,
}: WeighingContent): string {
  // The keys stand in alphabetical order.
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
}
