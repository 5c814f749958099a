import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { Closing } from '../../documents/closing/closing'
import { Refusal } from '../refusal'
import { judgeClosing } from '../results/judge-readings'
import { isBroken, loadEvidence } from '../results/load-evidence'
import { isEnded } from '../trials/rules'
import { amendContent } from './amend-content'
import { loadAmendments, type Amendments } from './load-amendments'

export type Closed =
  | {
      outcome: 'sealed'
      /** Of what was closed. */
      hash: string
      closing: Closing
      amendments: Amendments
      /** What stands now: what was closed, with the accepted ones. */
      standing: Closing
    }
  /** Its readings are open, or ended before readings were sealed, or the book is not what was closed. */
  | { outcome: 'open' | 'unsealed' | 'broken' }

/** What was closed of a trial, and what came after. @throws Refusal 'not-found' */
export async function loadClosed(from: Db | Tx, bakeryId: string, trialId: string): Promise<Closed> {
  const trial = await from.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: { state: true },
  })
  if (!trial) throw new Refusal('not-found')
  // By far the most looks at an open trial need nothing more.
  if (!isEnded(trial.state)) return { outcome: 'open' }
  const { sealed } = await loadEvidence(from, bakeryId, trialId)
  if (isBroken(sealed)) return { outcome: 'broken' }
  if (sealed.outcome !== 'agrees') return { outcome: 'unsealed' }
  const [read, amendments] = await Promise.all([
    judgeClosing(from, { bakeryId, trialId, hash: sealed.hash }),
    loadAmendments(from, bakeryId, trialId),
  ])
  if (read.outcome !== 'read') return { outcome: 'broken' }
  const { closing } = read
  return {
    outcome: 'sealed',
    hash: sealed.hash,
    closing,
    amendments,
    standing: amendContent(closing, amendments.accepted),
  }
}
