import 'server-only'
import { formatDateTime } from '../../words/format/date'
import { command } from '../command'
import { Refusal } from '../refusal'
import { closedForAmending } from './closed-for-amending'
import { decideAmendmentInput } from './decide-amendment.input'
import { peopleThere } from './people-there'
import { decidesAs } from './second-person'

/**
 * Accepts an amendment or turns it down, once and for good: owner or head baker who did not propose it; a shift baker only
 * as a witness, where nobody else could; who is alone in the bakery, alone. What is accepted makes a second analysis
 * beside the first.
 * Refuses: not-found, not-allowed, own-amendment, amendment-decided, stale-moved-on, seal-broken, amendments-broken; note missing.
 */
export const decideAmendment = command({
  name: 'amendments.decide-amendment',
  input: decideAmendmentInput,
  right: 'decide-amendment',
  async run({ tx, actor, now, input: { amendmentId, seenHash, accept, note } }) {
    const { bakeryId, personId, role } = actor
    const named = await tx.amendment.findUnique({
      where: { bakeryId_id: { bakeryId, id: amendmentId } },
      select: { trialId: true },
    })
    if (!named) throw new Refusal('not-found')
    const { amendments } = await closedForAmending(tx, bakeryId, named.trialId)
    const amendment = amendments.all.find(({ id }) => id === amendmentId)
    if (!amendment) throw new Refusal('not-found')
    if (amendment.hash !== seenHash) throw new Refusal('stale-moved-on')
    const { proposedById, verdict, change } = amendment
    const may = decidesAs({
      person: { id: personId, role },
      proposedById,
      people: await peopleThere(tx, bakeryId),
    })
    if ('bar' in may) throw new Refusal(may.bar)
    if (verdict) {
      const bakery = await tx.bakery.findUniqueOrThrow({
        where: { bakeryId },
        select: { locale: true, timeZone: true },
      })
      throw new Refusal('amendment-decided', { who: verdict.by.name, at: formatDateTime(verdict.at, bakery) })
    }
    await tx.amendmentVerdict.create({
      data: {
        bakeryId,
        amendmentId,
        proposedById,
        isAccepted: accept,
        signsAs: may.as,
        note,
        decidedById: personId,
        at: now,
      },
    })
    return {
      value: { accepted: accept },
      audit: {
        target: named.trialId,
        after: { amendment: amendmentId, hash: seenHash, accepted: accept, as: may.as, dough: change.dough.code },
        reason: note || undefined,
      },
    }
  },
})
