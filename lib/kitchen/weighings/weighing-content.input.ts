import { textOfWeighing } from '../../documents/weighing/text-of-weighing.input'
import type { WeighingEntry } from './log-weighing.input'

/** What a weighing's hash is of: everything that was entered but its id and the confirmation of an odd mass. */
export function weighingContentText(entry: WeighingEntry): string {
  return textOfWeighing({
    batch: entry.batchId,
    how: entry.how,
    ingredient: entry.ingredientId,
    ...(entry.lots
      ? {
          lots: entry.lots.map(({ lotId, code, mass }) => ({
            lot: lotId ?? null,
            code: code ?? null,
            mass: mass ?? null,
          })),
        }
      : {}),
    mass: entry.mass ?? null,
    part: entry.part,
    reason: entry.reason ?? null,
    stage: entry.stageId,
    supersedes: entry.supersedesId ?? null,
    takenAt: entry.takenAt,
    unit: entry.unit ?? null,
  })
}
