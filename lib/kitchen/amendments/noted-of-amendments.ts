import 'server-only'
import { z } from 'zod'
import { readAuditEntry } from '../../documents/audit-entry/read-audit-entry'
import type { AuditEntryContent } from '../../documents/audit-entry/text-of-audit-entry'
import { hashOfText } from '../../documents/hash-of-text'

/** Who did it and when, by the record itself. */
type Said = { by: string | null; at: string; reason: string }

export type NotedOfAmendments =
  /** The code of its dough; null where a device sent it. */
  | { kind: 'proposed'; amendment: string; hash: string; dough: string | null }
  | ({ kind: 'decided'; amendment: string; hash: string; isAccepted: boolean; as: string; dough: string } & Said)
  | ({ kind: 'slip'; amended: string; as: string; isLast: boolean } & Said)

/** By which entries of the record amendments of a trial came about. */
export const amendingActions = {
  desk: ['amendments.propose-amendment', 'amendments.propose-not-counting'],
  device: 'intake.take-entries',
  decided: 'amendments.decide-amendment',
  slip: 'amendments.sign-slip',
} as const

const proposed = z.looseObject({ amendment: z.string(), hash: z.string(), dough: z.string() })
const late = z.looseObject({ amendment: z.string(), hash: z.string(), trial: z.string() })
const fromDevice = z.looseObject({ amendments: z.array(late) })
const decided = z.looseObject({ ...proposed.shape, accepted: z.boolean(), as: z.string() })
const slip = z.looseObject({ amended: z.string(), as: z.string(), isLast: z.boolean() })

/** What an entry of the record notes of the amendments of a trial; nothing where it is not the text that was hashed. */
export function notedOfAmendments(entryText: string, hash: string, trialId: string): NotedOfAmendments[] {
  if (hashOfText(entryText) !== hash) return []
  const read = readAuditEntry(entryText)
  if (read.outcome !== 'read') return []
  const { action, target, after } = read.entry
  if (action === amendingActions.device)
    return (fromDevice.safeParse(after).data?.amendments ?? [])
      .filter(({ trial }) => trial === trialId)
      .map(({ amendment, hash: own }) => ({ kind: 'proposed', amendment, hash: own, dough: null }))
  if (target !== trialId) return []
  if (amendingActions.desk.some((desk) => desk === action)) {
    const note = proposed.safeParse(after).data
    return note ? [{ kind: 'proposed', amendment: note.amendment, hash: note.hash, dough: note.dough }] : []
  }
  if (action === amendingActions.decided) {
    const note = decided.safeParse(after).data
    if (!note) return []
    const { amendment, accepted: isAccepted, as, dough } = note
    return [{ kind: 'decided', amendment, hash: note.hash, isAccepted, as, dough, ...saidIn(read.entry) }]
  }
  const note = action === amendingActions.slip ? slip.safeParse(after).data : undefined
  if (!note) return []
  const { amended, as, isLast } = note
  return [{ kind: 'slip', amended, as, isLast, ...saidIn(read.entry) }]
}

function saidIn({ who, at, reason }: AuditEntryContent): Said {
  return { by: who?.kind === 'desk' ? who.person : null, at, reason: reason ?? '' }
}
