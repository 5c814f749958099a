import 'server-only'
import type { Tx } from '../../db/client'
import { Refusal } from '../refusal'
import { loadSealed } from '../results/load-sealed'
import { lockTrial } from '../trials/lock-trial'
import { isEnded } from '../trials/rules'
import { loadClosed, type Closed } from './load-closed'

/**
 * Holds a trial until the transaction ends, and gives what was closed of it, its amendments, and what stands with those
 * that were accepted.
 * @throws Refusal not-found, readings-not-closed, nothing-sealed, seal-broken, amendments-broken
 */
export async function closedForAmending(
  tx: Tx,
  bakeryId: string,
  trialId: string,
): Promise<Extract<Closed, { outcome: 'sealed' }>> {
  const { state } = await lockTrial(tx, bakeryId, trialId)
  if (!isEnded(state)) throw new Refusal('readings-not-closed')
  const closed = await loadClosed(tx, bakeryId, trialId, await loadSealed(tx, bakeryId, trialId))
  switch (closed.outcome) {
    case 'unsealed':
      throw new Refusal('nothing-sealed')
    case 'broken':
      throw new Refusal('seal-broken')
    case 'sealed':
      if (closed.amendments.fault) throw new Refusal('amendments-broken')
      return closed
    default:
      return closed satisfies never
  }
}
