import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { Closing } from '../../documents/closing/closing'
import type { FoundSealed } from '../results/load-sealed'
import { amendContent } from './amend-content'
import { amendedHash } from './amended-hash'
import { loadAmendments, type Amendments } from './load-amendments'
import { slipOf, type Slip } from './slip-of'

export type Closed =
  | {
      outcome: 'sealed'
      /** Of what was closed. */
      hash: string
      closing: Closing
      amendments: Amendments
      /** Hash of the accepted ones; null where there is none, or one of them is not what the record says. */
      amended: string | null
      /** Who signed over these that the first result rested on a slip; null where nothing is amended. */
      slip: Slip | null
      /** What stands now: what was closed, with the accepted ones. */
      standing: Closing
    }
  /** Its readings ended before readings were sealed, or the book is not what was closed. */
  | { outcome: 'unsealed' | 'broken' }

/**
 * What came after the readings of a trial were closed, and what stands with it.
 * @param found what was closed
 * @param known its amendments, where they were read already
 */
export async function loadClosed(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
  { sealed, closed }: FoundSealed,
  known?: Amendments,
): Promise<Closed> {
  if (sealed === null) return { outcome: 'unsealed' }
  if (sealed.outcome !== 'agrees' || closed === null) return { outcome: 'broken' }
  const { closing } = closed
  const amendments = known ?? (await loadAmendments(from, bakeryId, trialId))
  const { accepted, fault, slips } = amendments
  const amended = accepted.length > 0 && fault === null ? amendedHash(accepted) : null
  return {
    outcome: 'sealed',
    hash: sealed.hash,
    closing,
    amendments,
    amended,
    slip: amended === null ? null : slipOf(slips, amended),
    standing: amendContent(closing, accepted),
  }
}
