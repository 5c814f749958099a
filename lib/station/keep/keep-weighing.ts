import type { KindFacts } from '../kinds/kind-facts'
import { holds } from '../outbox/holds'
import { lineKey, type LineStanding } from '../outbox/stand-of-line'
import { keepEntry, type KeptBy } from './keep-entry'
import type { WeighLine } from './weigh-facts'

/** What is said of a line: as planned, what the scale showed, or that nothing of it went in. */
export type SaidOfLine = (
  | { how: 'ticked' | 'left_out' }
  | {
      how: 'weighed'
      mass: string
      unit: string
    }
) & { lots?: KindFacts['weighing']['payload']['lots'] }

export type NewWeighing = {
  batchId: string
  line: Pick<WeighLine, 'stageId' | 'ingredientId' | 'part'>
  said: SaidOfLine
  /** Somebody looked at the scale again. */
  confirmed: boolean
  /** What stood there and is wrong, what it was as it is shown, and why. */
  wrong: { standing: Pick<LineStanding, 'id'>; was: string; reason: string } | null
  by: KeptBy
  shown: { code: string; line: string; lots: KindFacts['weighing']['shown']['lots'] }
  draft: string
}

/** Under what a half-typed mass is kept: nobody finds another's, and keeps it as their own. */
export function weighDraft(personId: string, batchId: string, key: string): string {
  return `${personId} ${batchId} ${key}`
}

/** As `weighDraft`, of the lots that it comes from. */
export function lotsDraft(draft: string): string {
  return `${draft} lots`
}

/**
 * Keeps a weighing on the tablet.
 * @returns false where the tablet holds one of the same line already, or a correction of the same one
 * @throws where the tablet cannot keep it
 */
export async function keepWeighing(q: NewWeighing): Promise<boolean> {
  const { batchId, line, said, confirmed, wrong, by, shown, draft } = q
  const { stageId, ingredientId, part } = line
  const key = lineKey(line)
  return keepEntry({
    kind: 'weighing',
    content: {
      batchId,
      stageId,
      ingredientId,
      part,
      ...said,
      ...(wrong ? { supersedesId: wrong.standing.id, reason: wrong.reason } : {}),
      ...(confirmed ? { confirmed } : {}),
    },
    shown: { ...shown, was: wrong?.was ?? null },
    by,
    draft,
    isTaken: (entries) =>
      entries.some(
        (each) =>
          each.kind === 'weighing' &&
          holds(each) &&
          (wrong
            ? each.payload.supersedesId === wrong.standing.id
            : each.payload.batchId === batchId && !each.payload.supersedesId && lineKey(each.payload) === key),
      ),
  })
}
