import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'
import { inProduction } from './rules'

/** The bakery's formulas by name, each with what is in production, what is coming, and the drafts. */
export const listFormulas = query({
  name: 'formulas.list-formulas',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor, now }) {
    const formulas = await db.formula.findMany({
      where: { bakeryId: actor.bakeryId },
      select: {
        id: true,
        name: true,
        versions: {
          select: { id: true, number: true, signedAt: true, effectiveAt: true, discardedAt: true, contentHash: true, scalingMassG: true, pieces: true },
          orderBy: { number: 'desc' },
        },
      },
      orderBy: [{ name: 'asc' }, { id: 'asc' }],
      take: 500,
    })
    return {
      formulas: formulas.map(({ id, name, versions }) => {
        const standing = inProduction(versions, now)
        return {
          id,
          name,
          inProduction: standing && {
            versionId: standing.id,
            number: standing.number,
            since: standing.effectiveAt,
            scalingMassG: standing.scalingMassG,
            pieces: standing.pieces,
          },
          coming: versions.flatMap((version) =>
            version.effectiveAt && version.effectiveAt > now ? [{ versionId: version.id, number: version.number, from: version.effectiveAt }] : [],
          ),
          drafts: versions.flatMap((version) =>
            version.signedAt || version.discardedAt ? [] : [{ versionId: version.id, number: version.number, isPartSigned: version.contentHash !== null }],
          ),
        }
      }),
      mayDraft: levelOf(actor.role, 'draft-formula') === 'yes',
    }
  },
})
