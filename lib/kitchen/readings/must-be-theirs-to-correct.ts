import 'server-only'
import { levelOf, type ActorOf } from '../../auth/rights'
import { isOwnSlip } from '../conduct/is-own-slip.input'
import { wantsPin } from '../conduct/wants-pin.input'
import { Refusal } from '../refusal'
import { mayCorrect } from './rules'

/**
 * Refuses a correction to whoever may not make it, or who has not said at this tablet who they are.
 * @throws Refusal correction-not-yours, correction-wants-pin
 */
export function mustBeTheirsToCorrect(
  wrong: { personId: string; takenAt: Date; receivedAt: Date },
  { actor, now }: { actor: ActorOf<'log-reading'>; now: Date },
): void {
  const { personId } = actor
  if (!mayCorrect({ level: levelOf(actor, 'correct-reading'), personId, reading: wrong, now }))
    throw new Refusal('correction-not-yours')
  if (actor.kind !== 'station') return
  const isSlip = isOwnSlip(
    { person: { id: wrong.personId }, receivedAt: wrong.receivedAt },
    { person: { id: personId }, receivedAt: now },
  )
  if (wantsPin({ isSlip, ...actor, now })) throw new Refusal('correction-wants-pin')
}
