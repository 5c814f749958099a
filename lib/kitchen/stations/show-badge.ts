import 'server-only'
import type { StationActor } from '../../auth/actor'
import { findByBadge } from '../../auth/badges'
import { mayTryAtStation, takeBackStationTry } from '../../auth/pin-attempts'
import { appendAudit } from '../../db/append-audit'
import { db } from '../../db/client'
import { inTransaction } from '../../db/transaction'
import { readBadge } from '../badge-text.input'
import { command } from '../command'
import { Refusal } from '../refusal'
import { comeOn } from './come-on'
import { showBadgeInput } from './show-badge.input'

/**
 * Logs whoever holds a badge on to a tablet, as name and PIN do, but for what wants a PIN there.
 * @returns as `logOn`
 * Refuses: too-many-badges, wrong-badge.
 */
export const showBadge = command({
  name: 'stations.show-badge',
  input: showBadgeInput,
  right: 'hold-station',
  isSecret: true,
  // Their shift there ends for a new one, which may be the one that calls.
  endsOwnSession: true,
  prepare: ({ actor, address, now, input }) => mustBeBadge(actor, address, readBadge(input.badge), now),
  async run({ tx, actor, now, prepared: secret }) {
    // Read again, and held: it may have been withdrawn meanwhile.
    const person = await findByBadge(tx, { bakeryId: actor.bakeryId, secret })
    if (!person) throw new Refusal('wrong-badge')
    return comeOn(tx, actor, { person, byBadge: true }, now)
  },
})

/** @returns the badge's secret */
async function mustBeBadge(actor: StationActor, address: string, secret: string | null, now: Date): Promise<string> {
  const { bakeryId } = actor
  if (!(await mayTryAtStation(db(), actor, now))) throw new Refusal('too-many-badges')
  const isKnown = secret !== null && (await inTransaction((tx) => findByBadge(tx, { bakeryId, secret }))) !== null
  if (!isKnown) {
    await inTransaction((tx) => appendAudit(tx, bakeryId, now, actor, address, { action: 'refused.badge' }))
    throw new Refusal('wrong-badge')
  }
  await takeBackStationTry(db(), actor)
  return secret
}
