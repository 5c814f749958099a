import type { StepDetails, StepKind } from '../../kitchen/steps/step-kinds.input'
import { holds } from '../outbox/holds'
import { clockAheadMs } from '../outbox/clock-ahead'
import { keepEntry, type KeptBy } from './keep-entry'
import { recall } from './tablet'

export type NewStep = {
  batchId: string
  code: string
  step: StepKind
  agoS: number
  details: Partial<StepDetails>
  /** What is wrong and why, and whether it was done at all. */
  fix: { wrongId: string; reason: string; isDone: boolean } | null
  by: KeptBy
  draft: string | null
}

/** Under what a half-typed step is kept: nobody finds another's, and keeps it as their own. */
export function stepDraft(personId: string, batchId: string, step: StepKind): string {
  return `${personId} step ${batchId} ${step}`
}

/**
 * Keeps a step on the tablet, as the book will hold it: texts without the blanks at their ends and in one form of Unicode,
 * or its hash would be another.
 * @returns false where the tablet holds a correction of the same one already
 * @throws where the tablet cannot keep it
 */
export async function keepStep({ batchId, code, step, agoS, details, fix, by, draft }: NewStep): Promise<boolean> {
  const floor = await recall('floor')
  return keepEntry({
    kind: 'step',
    content: {
      batchId,
      step,
      isDone: fix?.isDone ?? true,
      agoS,
      clockAheadS: floor ? Math.round(clockAheadMs(floor) / 1000) : null,
      ...asKept(details),
      ...(fix ? { supersedesId: fix.wrongId, reason: fix.reason.trim().normalize('NFC') } : {}),
    },
    shown: { code, isFix: fix !== null },
    by,
    draft,
    isTaken: (entries) =>
      fix !== null &&
      entries.some((each) => each.kind === 'step' && holds(each) && each.payload.supersedesId === fix.wrongId),
  })
}

/** What is said, without what is not. */
function asKept(details: Partial<StepDetails>): Partial<StepDetails> {
  const texts = Object.entries(details).map(([name, value]) => [
    name,
    typeof value === 'string' ? value.trim().normalize('NFC') : value,
  ])
  return Object.fromEntries(
    texts.filter(([, value]) => value !== '' && value !== null && value !== undefined),
  ) as Partial<StepDetails>
}
