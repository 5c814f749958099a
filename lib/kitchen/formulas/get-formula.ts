import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'
import { Refusal } from '../refusal'
import { inProduction, stateOfVersion } from './rules'

/**
 * A formula's versions, newest first: why each was drafted, by whom, by which decision on a trial, who signed, from
 * when it held. Refuses: not-found.
 */
export const getFormula = query({
  name: 'formulas.get-formula',
  input: z.strictObject({ formulaId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const formula = await db.formula.findUnique({
      where: { bakeryId_id: { bakeryId: actor.bakeryId, id: input.formulaId } },
      select: {
        id: true,
        name: true,
        versions: {
          select: {
            id: true,
            number: true,
            reason: true,
            createdAt: true,
            signedAt: true,
            effectiveAt: true,
            discardedAt: true,
            contentHash: true,
            draftedBy: { select: { name: true } },
            fromVersion: { select: { number: true } },
            decision: { select: { id: true, number: true } },
            signatures: {
              select: { personName: true, role: true, at: true, byProposer: true },
              orderBy: [{ at: 'asc' }, { id: 'asc' }],
            },
          },
          orderBy: { number: 'desc' },
          take: 500,
        },
      },
    })
    if (!formula) throw new Refusal('not-found')
    const { versions } = formula
    const standing = inProduction(versions, now)
    return {
      id: formula.id,
      name: formula.name,
      inProduction: standing && { versionId: standing.id, number: standing.number, since: standing.effectiveAt },
      versions: versions.map(({ draftedBy, fromVersion, contentHash, ...version }) => ({
        ...version,
        draftedBy: draftedBy.name,
        fromNumber: fromVersion?.number ?? null,
        isPartSigned: contentHash !== null && version.signedAt === null && version.discardedAt === null,
        state: stateOfVersion(version, versions, now),
      })),
      mayDraft: levelOf(actor, 'draft-formula') === 'yes',
    }
  },
})
