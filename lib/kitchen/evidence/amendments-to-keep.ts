import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { AmendmentsOfFormat1 } from '../../documents/evidence-amendments/amendments-of-format-1'
import { loadClosed } from '../amendments/load-closed'
import { judgeAmended } from '../results/judge-readings'
import type { FoundSealed } from '../results/load-sealed'
import { figuresShown } from './figures-shown'
import { workOut, type WorkedOut } from './work-out'

/** What came after the readings of a trial were closed, without the figures that it comes to. */
export type CameAfter = Omit<AmendmentsOfFormat1, 'format' | 'second'>

/**
 * What came after the closing, and the second result that it makes; null where nothing did, or nothing is sealed. Figures
 * are worked out by whoever asks, outside of a transaction.
 * @param found what was closed
 */
export async function cameAfter(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
  found: FoundSealed,
): Promise<{ after: CameAfter; workOutSecond: () => Promise<WorkedOut | null> } | null> {
  const closed = await loadClosed(from, bakeryId, trialId, found)
  if (closed.outcome !== 'sealed') return null
  const { hash, closing, amended, slip, standing } = closed
  const { all, unread, fault } = closed.amendments
  if (all.length + unread === 0 && fault === null) return null
  return {
    after: {
      amendments: all.map(({ text, hash: own, verdict }) => ({
        text,
        hash: own,
        verdict: verdict && { ...verdict, at: verdict.at.toISOString() },
      })),
      unread,
      amended,
      slip: slip?.fault
        ? []
        : (slip?.signatures ?? []).map(({ at, ...signed }) => ({ ...signed, at: at.toISOString() })),
    },
    async workOutSecond() {
      if (amended === null) return null
      const { batches, conduct } = await judgeAmended({ closed: hash, amended }, standing)
      return workOut({ declared: { ...closing.declared, state: closing.closed.state }, batches, conduct })
    },
  }
}

/** The part of evidence of what came after the closing. @param second as `workOutSecond` gave it, of the same */
export function amendmentsShown(after: CameAfter, second: WorkedOut | null): Omit<AmendmentsOfFormat1, 'format'> {
  return { ...after, second: second && figuresShown(second) }
}
