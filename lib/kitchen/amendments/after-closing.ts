import 'server-only'
import type { DeskActor } from '../../auth/actor'
import { levelOf } from '../../auth/rights'
import type { Db } from '../../db/client'
import { analyseOnce } from '../results/analyse-once'
import type { TrialAnalysis } from '../results/analyse-trial'
import { headlineComparison } from '../results/headline-comparison'
import { judgeAmended } from '../results/judge-readings'
import type { FoundSealed } from '../results/load-sealed'
import { loadAmendments } from './load-amendments'
import { loadClosed } from './load-closed'
import { peopleThere } from './people-there'
import { decidesAs, slipNeeds, slipSignsAs } from './second-person'

/**
 * What came after the readings of a trial were closed: its amendments in their order, with what was said of them; the
 * second analysis, of what was closed with those that were accepted put in; whether owner and head baker signed that the
 * first rested on a slip; and what whoever asks may do. Null while the readings are open, where they ended before they
 * were sealed, and where the book is not what was closed: then nothing is amended.
 * @param found what was closed
 * @param read `readAfterClosing`; null of a trial whose readings were open
 * @throws Refusal 'took-too-long' | 'not-worked-out'
 */
export async function afterClosing(
  db: Db,
  actor: DeskActor,
  trialId: string,
  found: FoundSealed,
  read: Awaited<ReturnType<typeof readAfterClosing>> | null,
) {
  const { bakeryId, personId, role } = actor
  if (read === null) return null
  const { amendments: known, people } = read
  const closed = await loadClosed(db, bakeryId, trialId, found, known)
  if (closed.outcome !== 'sealed') return null
  const { hash: closedHash, closing, amendments, amended, slip, standing } = closed
  const { all, accepted, unread, fault } = amendments
  const declared = { ...closing.declared, state: closing.closed.state }
  const judged = amended === null ? null : await judgeAmended({ closed: closedHash, amended }, standing)
  const second = judged && (await analyseOnce(declared, judged.batches))
  const person = { id: personId, role }
  const signs =
    slip && !slip.isSigned && !slip.fault
      ? slipSignsAs({
          person,
          people,
          given: slip.signatures.map(({ by, as }) => ({ personId: by.id, as })),
        })
      : null
  return {
    amendments: all.map(({ id, hash, change, reason, by, at, entry, proposedById, verdict }) => {
      const may = decidesAs({ person, proposedById, people })
      return {
        id,
        hash,
        change,
        reason,
        by: by.name,
        at: new Date(at),
        /** A device sent it after the closing. */
        isLate: entry !== null,
        verdict: verdict && { ...verdict, by: verdict.by.name },
        /** As what whoever asks may say yes or no to it; null where they may not, or nothing is left to say. */
        mayDecide: verdict || fault || 'bar' in may ? null : may.as,
        isOwn: proposedById === personId,
      }
    }),
    /** Entries that came late and cannot be read as a reading of the trial. */
    unread,
    /** Something kept here is not what the record says of it: nothing is worked out of it. */
    fault: fault ?? (slip?.fault ? ('not-of-record' as const) : null),
    second:
      second && !slip?.fault
        ? {
            ...shownOf(second),
            headline: await headlineComparison({
              declared,
              batches: judged.batches,
              comparison: second.comparison,
              found: judged.conduct.foundCauses,
            }),
          }
        : null,
    /** An amendment that counts was accepted by who proposed it, being alone. */
    nobodyElse: accepted.some(({ verdict }) => verdict?.as === 'alone'),
    slip: slip && {
      isSigned: slip.isSigned && !slip.fault,
      isAlone: slip.signatures.some(({ as }) => as === 'alone'),
      /** Which signatures it takes. */
      needs: slipNeeds(people),
      amendedHash: slip.amendedHash,
      signatures: slip.signatures.map(({ by, ...signature }) => ({ ...signature, by: by.name })),
      maySign: signs && !('bar' in signs) ? signs : null,
    },
    mayPropose: fault === null && levelOf(actor, 'propose-amendment') === 'yes',
    doughs: standing.doughs.map(({ id, code, state }) => ({ id, code, state })),
    /** Those that are read; what is worked out of others cannot be amended by itself. */
    measures: closing.measures
      .filter(({ derivation }) => derivation === null)
      .map(({ id, code, name, unit, level, repeats }) => ({ id, code, name, unit, level, repeats })),
    pieces: closing.declared.piecesPerBatch,
  }
}

/** The rows that it rests on beside what was closed, so that they can be read beside the seal. */
export async function readAfterClosing(db: Db, bakeryId: string, trialId: string) {
  const [amendments, people] = await Promise.all([loadAmendments(db, bakeryId, trialId), peopleThere(db, bakeryId)])
  return { amendments, people }
}

/** As a result is shown: without the doughs that it does not count, which its list of doughs names. */
function shownOf({ uncounted: _, ...shown }: TrialAnalysis): Omit<TrialAnalysis, 'uncounted'> {
  return shown
}
