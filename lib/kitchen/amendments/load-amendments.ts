import 'server-only'
import type { Db, Tx } from '../../db/client'
import { readAmendment } from '../../documents/amendment/read-amendment'
import type { AmendmentContent } from '../../documents/amendment/text-of-amendment'
import { inOrderOfAcceptance } from './in-order-of-acceptance'
import { amendingActions, notedOfAmendments } from './noted-of-amendments'
import type { DecidesAs } from './second-person'
import { slipRows, type SlipsKept } from './slip-of'

export type Amendment = AmendmentContent & {
  /** As it was frozen. */
  text: string
  hash: string
  proposedById: string
  verdict: {
    isAccepted: boolean
    as: DecidesAs
    note: string
    by: { id: string; name: string }
    at: Date
  } | null
}

/** What is wrong with what is kept of a trial's amendments: nothing is worked out of them until that is cleared up. */
export type AmendmentFault = 'damaged' | 'unknown-format' | 'not-of-record' | 'gone'

export type Amendments = {
  /** All, in the order in which they were proposed. */
  all: Amendment[]
  /** Those that a second person said yes to, in the order in which that was said. */
  accepted: Amendment[]
  /** Entries from devices that came after the closing and cannot be read as a reading of it; they are kept aside. */
  unread: number
  fault: AmendmentFault | null
  /** Who signed that the first result rested on a slip, over whichever amendments. */
  slips: SlipsKept
}

/**
 * The amendments of a trial with what was said of them, each held against its hash and against the record: a row that
 * somebody changed, put in or took away past every trigger is a fault.
 */
export async function loadAmendments(from: Db | Tx, bakeryId: string, trialId: string): Promise<Amendments> {
  const [rows, unread, noted, slips] = await Promise.all([
    from.amendment.findMany({
      where: { bakeryId, trialId },
      select: {
        id: true,
        text: true,
        hash: true,
        entryId: true,
        proposedById: true,
        at: true,
        verdict: {
          select: {
            isAccepted: true,
            signsAs: true,
            note: true,
            at: true,
            decidedBy: { select: { id: true, name: true } },
          },
        },
      },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
    }),
    from.entryToSettle.count({ where: { bakeryId, trialId, why: 'trial_closed', amendment: null } }),
    notedOf(from, bakeryId, trialId),
    slipRows(from, bakeryId, trialId),
  ])
  const late = await notedLate(
    from,
    bakeryId,
    trialId,
    rows.flatMap(({ entryId, at }) => (entryId === null ? [] : [at])),
  )
  let fault: AmendmentFault | null = null
  const all = rows.flatMap(({ id, text, hash, entryId, proposedById, verdict }): Amendment[] => {
    const read = readAmendment(text, hash)
    if (read.outcome !== 'read') {
      fault ??= read.outcome
      return []
    }
    const proposal = (entryId === null ? noted.proposed : late).get(id)
    const decided = noted.decided.get(id)
    const isAsNoted =
      read.amendment.id === id &&
      read.amendment.trial === trialId &&
      proposal === hash &&
      decided?.isAccepted === verdict?.isAccepted &&
      decided?.by === verdict?.decidedBy.id
    if (!isAsNoted) fault ??= 'not-of-record'
    return [
      {
        ...read.amendment,
        text,
        hash,
        proposedById,
        verdict: verdict && {
          isAccepted: verdict.isAccepted,
          as: decidesAsOf(verdict.signsAs),
          note: verdict.note,
          by: verdict.decidedBy,
          at: verdict.at,
        },
      },
    ]
  })
  const there = new Set(rows.map(({ id }) => id))
  if ([...noted.proposed.keys(), ...noted.decided.keys()].some((id) => !there.has(id))) fault ??= 'gone'
  return {
    all,
    accepted: inOrderOfAcceptance(all, ({ verdict }) => verdict),
    unread,
    fault,
    slips: { rows: slips, noted: noted.slips },
  }
}

function decidesAsOf(as: string): DecidesAs {
  return as === 'witness' || as === 'alone' ? as : 'second_person'
}

/** What the record notes of proposals at the desk and of what was said of amendments, by the amendment's id. */
async function notedOf(from: Db | Tx, bakeryId: string, trialId: string) {
  const entries = await from.auditEntry.findMany({
    where: {
      bakeryId,
      targetId: trialId,
      action: { in: [...amendingActions.desk, amendingActions.decided, amendingActions.slip] },
    },
    orderBy: { number: 'asc' },
    select: { entryText: true, hash: true },
  })
  const found = {
    proposed: new Map<string, string>(),
    decided: new Map<string, { isAccepted: boolean; by: string | null }>(),
    slips: [] as SlipsKept['noted'][number][],
  }
  for (const note of entries.flatMap(({ entryText, hash }) => notedOfAmendments(entryText, hash, trialId))) {
    if (note.kind === 'decided') found.decided.set(note.amendment, note)
    else if (note.kind === 'proposed') found.proposed.set(note.amendment, note.hash)
    else found.slips.push(note)
  }
  return found
}

/** What the record notes of amendments that came from devices: in the entry of the moment in which they came. */
async function notedLate(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
  moments: readonly Date[],
): Promise<Map<string, string>> {
  if (moments.length === 0) return new Map()
  const entries = await from.auditEntry.findMany({
    where: { bakeryId, action: amendingActions.device, at: { in: [...moments] } },
    select: { entryText: true, hash: true },
  })
  return new Map(
    entries.flatMap(({ entryText, hash }) =>
      notedOfAmendments(entryText, hash, trialId).flatMap((note) =>
        note.kind === 'proposed' ? [[note.amendment, note.hash] as const] : [],
      ),
    ),
  )
}
