import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { closedForAmending } from './closed-for-amending'
import { peopleThere } from './people-there'
import { slipSignsAs } from './second-person'
import { signSlipInput } from './sign-slip.input'

/**
 * Signs that the first result of a trial rested on a slip: owner and head baker, the owner and any second baker where
 * there is no head baker, or who is alone in the bakery. With the last signature the headline says so; both results
 * go on standing. It is signed over the amendments that were accepted then: another one wants new signatures.
 * Refuses: not-found, not-allowed, readings-not-closed, nothing-sealed, seal-broken, amendments-broken, nothing-amended,
 * stale-moved-on, slip-signed, slip-signed-by-you; reason missing.
 */
export const signSlip = command({
  name: 'amendments.sign-slip',
  input: signSlipInput,
  right: 'decide-amendment',
  async run({ tx, actor, now, input: { trialId, amendedHash: seen, reason } }) {
    const { bakeryId, personId, role } = actor
    const { amended: hash, slip } = await closedForAmending(tx, bakeryId, trialId)
    if (hash === null || slip === null) throw new Refusal('nothing-amended')
    if (hash !== seen) throw new Refusal('stale-moved-on')
    if (slip.fault) throw new Refusal('amendments-broken')
    if (slip.isSigned) throw new Refusal('slip-signed')
    const may = slipSignsAs({
      person: { id: personId, role },
      people: await peopleThere(tx, bakeryId),
      given: slip.signatures.map(({ by, as }) => ({ personId: by.id, as })),
    })
    if ('bar' in may) throw new Refusal(may.bar)
    const { as, isLast } = may
    await tx.slipSignature.create({
      data: { bakeryId, trialId, amendedHash: hash, signsAs: as, isLast, reason, signedById: personId, at: now },
    })
    return {
      value: { isLast },
      audit: { target: trialId, after: { amended: hash, as, isLast }, reason },
    }
  },
})
