import type { WeighingOfFormat1 } from './weighing-of-format-1.input'
import type { WeighingOfFormat2 } from './weighing-of-format-2.input'
import type { WeighingOfFormat3 } from './weighing-of-format-3.input'

/** A lot that something was taken from: by its id, or by the code on its label where nobody knew it. */
export type LotOfContent = { lot: string | null; code?: string | null; mass: string | null }

/** What was entered of a line, whatever the format of its text. */
export type WeighingContent = Omit<WeighingOfFormat1, 'format'> & {
  /** What it was taken from; left out where that was not said. */
  lots?: LotOfContent[]
}

/**
 * What was entered of a line in its one text: canonical JSON (RFC 8785), as `textOfReading`. Of one that names no lots it
 * is the text of format 1, and of one that names them by their ids that of format 2, so that a device that knows of no
 * more and the book have the same hash.
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
  const rest = { mass, part, reason, stage, supersedes, takenAt, unit }
  if (lots === undefined)
    return JSON.stringify({ batch, format: 1, how, ingredient, ...rest } satisfies WeighingOfFormat1)
  const byId = lots.flatMap(({ lot, code = null, mass: ofLot }) =>
    lot !== null && code === null ? [{ lot, mass: ofLot }] : [],
  )
  if (byId.length === lots.length)
    return JSON.stringify({ batch, format: 2, how, ingredient, lots: byId, ...rest } satisfies WeighingOfFormat2)
  const named = lots.map(({ lot, code = null, mass: ofLot }) => ({ code, lot, mass: ofLot }))
  return JSON.stringify({ batch, format: 3, how, ingredient, lots: named, ...rest } satisfies WeighingOfFormat3)
}
