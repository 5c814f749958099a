import 'server-only'
import type { StationActor } from '../../auth/actor'
import { forgetPinTry, mayTryPin } from '../../auth/pin-attempts'
import { isPin } from '../../auth/pin-hash'
import { appendAudit } from '../../db/append-audit'
import { db } from '../../db/client'
import { inTransaction } from '../../db/transaction'
import { command } from '../command'
import { Refusal } from '../refusal'
import { comeOn } from './come-on'
import { logOnInput } from './log-on.input'

/**
 * Logs a person on to a tablet by their PIN. Whoever was on it stays one tap away.
 * @returns the token of their shift there, and now and then another secret of the tablet's own, for it alone
 * Refuses: too-many-pins, wrong-pin.
 */
export const logOn = command({
  name: 'stations.log-on',
  input: logOnInput,
  right: 'hold-station',
  isSecret: true,
  // A new PIN ends the shift of the same person there, which may be the one that calls.
  endsOwnSession: true,
  prepare: ({ actor, address, now, input }) => mustKnowPin(actor, address, input, now),
  async run({ tx, actor, now, input: { personId }, prepared: hash }) {
    // Read again: the person may have been switched off, or the PIN taken away, while it was judged.
    const person = await tx.person.findFirst({
      where: { bakeryId: actor.bakeryId, id: personId, endedAt: null, pin: { hash } },
      select: { id: true, name: true, role: true },
    })
    if (!person) throw Refusal.at('pin', 'wrong-pin')
    return comeOn(tx, actor, { person, byBadge: false }, now)
  },
})

/** @returns the hash that the PIN was right for */
async function mustKnowPin(
  actor: StationActor,
  address: string,
  { personId, pin }: { personId: string; pin: string },
  now: Date,
): Promise<string> {
  const { bakeryId, stationId } = actor
  const tried = { bakeryId, stationId, personId }
  if (!(await mayTryPin(db(), tried, now))) throw new Refusal('too-many-pins')
  const stored = await db().pin.findFirst({
    where: { bakeryId, personId, person: { endedAt: null } },
    select: { hash: true },
  })
  if (!(await isPin(stored?.hash, pin)) || !stored) {
    const note = { action: 'refused.pin', ...(stored ? { target: personId } : {}) }
    await inTransaction((tx) => appendAudit(tx, bakeryId, now, actor, address, note))
    throw Refusal.at('pin', 'wrong-pin')
  }
  await forgetPinTry(db(), tried, now)
  return stored.hash
}
