import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { after } from '../after.input'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'
import { inProduction } from './rules'

/** The bakery's formulas by name, a page at a time, each with what is in production, what is coming, and the drafts; and how many of all have them. */
export const listFormulas = query({
  name: 'formulas.list-formulas',
  input: z.strictObject({ after }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const [inProductionCount, draftCount, page] = await Promise.all([
      db.formula.count({
        where: { bakeryId, versions: { some: { signedAt: { not: null }, effectiveAt: { lte: now } } } },
      }),
      db.formulaVersion.count({ where: { bakeryId, signedAt: null, discardedAt: null } }),
      readPage({
        bakeryId,
        list: 'formulas',
        after: input.after,
        count: () => db.formula.count({ where: { bakeryId } }),
        key: z.tuple([keyParts.text, keyParts.id]),
        read: (beyond, take) =>
          db.formula.findMany({
            where: {
              bakeryId,
              ...(beyond && { OR: [{ name: { gt: beyond[0] } }, { name: beyond[0], id: { gt: beyond[1] } }] }),
            },
            select: {
              id: true,
              name: true,
              versions: {
                select: {
                  id: true,
                  number: true,
                  signedAt: true,
                  effectiveAt: true,
                  discardedAt: true,
                  contentHash: true,
                  scalingMassG: true,
                  pieces: true,
                },
                orderBy: { number: 'desc' },
              },
            },
            orderBy: [{ name: 'asc' }, { id: 'asc' }],
            take,
          }),
        keyOf: ({ name, id }) => [name, id],
      }),
    ])
    const formulas = page.rows.map(({ id, name, versions }) => {
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
          version.effectiveAt && version.effectiveAt > now
            ? [{ versionId: version.id, number: version.number, from: version.effectiveAt }]
            : [],
        ),
        drafts: versions.flatMap((version) =>
          version.signedAt || version.discardedAt
            ? []
            : [{ versionId: version.id, number: version.number, isPartSigned: version.contentHash !== null }],
        ),
      }
    })
    return {
      formulas: { ...page, rows: formulas },
      inProductionCount,
      draftCount,
      mayDraft: levelOf(actor, 'draft-formula') === 'yes',
    }
  },
})
