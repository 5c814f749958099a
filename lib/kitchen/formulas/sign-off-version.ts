import 'server-only'
import { v7 as uuid } from 'uuid'
import { wordsIn } from '../../words/words'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { contentAsItIsNow } from './content-as-shown'
import { lockFormulaOfVersion } from './lock-formula'
import { readVersion } from './read-version'
import { meaningOfSignature, signaturesMissing, signingBar } from './signing-rules'
import { signOffVersionInput } from './sign-off-version.input'
import { signingOfVersion } from './signing-of-version'

/**
 * Signs a draft: what is baked already, a change for the reason it gives, or one that was drafted from a trial, whose
 * frozen evidence the content then holds. The first signature freezes the content; the last needed one puts it in production from the time it names.
 * Refuses: not-found, signed, discarded, stale, content-moved-on, already-signed, own-proposal, not-your-signature, wrong-password;
 * not-in-future and set-by-last at the time.
 */
export const signOffVersion = command({
  name: 'formulas.sign-off-version',
  input: signOffVersionInput,
  right: 'sign-off-formula',
  askPassword: true,
  async run({ tx, actor, now, language, input }) {
    const { bakeryId, personId, role } = actor
    const formulaId = await lockFormulaOfVersion(tx, bakeryId, input.versionId)
    const version = await readVersion(tx, bakeryId, input.versionId)
    if (!version) throw new Refusal('not-found')
    if (version.signedAt) throw new Refusal('signed')
    if (version.discardedAt) throw new Refusal('discarded')
    if (version.revision !== input.seenRevision) throw await staleRefusal(tx, actor, version.id)
    const { text, hash } = contentAsItIsNow(version)
    // The rows are as they were seen, so an ingredient's name or allergens are not.
    if (hash !== input.seenHash || (version.contentHash ?? hash) !== hash) throw new Refusal('content-moved-on')

    const { needed, grave, worksAlone } = await signingOfVersion(tx, version, now)
    const draftedById = version.draftedBy.id
    const bar = signingBar({ person: actor, draftedById, needed, given: version.signatures, worksAlone })
    if (bar) throw new Refusal(bar)
    const isLast = signaturesMissing(needed, [...version.signatures, { role }]).length === 0
    if (!isLast && input.effectiveAt) throw Refusal.at('effectiveAt', 'set-by-last')
    if (input.effectiveAt && input.effectiveAt < now) throw Refusal.at('effectiveAt', 'not-in-future')
    const effectiveAt = input.effectiveAt ?? now

    const isProposer = personId === draftedById
    const meaning = wordsIn(language).formulas.meanings[meaningOfSignature({ needed, grave, role, isProposer })]
    const { count } = await tx.formulaVersion.updateMany({
      where: { bakeryId, id: version.id, revision: input.seenRevision, signedAt: null, discardedAt: null },
      data: {
        contentText: text,
        contentHash: hash,
        revision: { increment: 1 },
        ...(isLast ? { signedAt: now, effectiveAt } : {}),
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, version.id)
    await tx.signature.create({
      data: {
        bakeryId,
        id: uuid(),
        versionId: version.id,
        personId,
        personName: actor.name,
        role,
        meaning,
        contentHash: hash,
        byProposer: isProposer,
        at: now,
      },
    })
    return {
      value: { formulaId },
      audit: {
        target: version.id,
        after: {
          formula: version.formula.name,
          version: version.number,
          content: hash,
          meaning,
          byProposer: isProposer,
          inProductionFrom: isLast ? effectiveAt.toISOString() : null,
        },
        reason: version.reason,
      },
    }
  },
})
