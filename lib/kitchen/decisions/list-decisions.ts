import 'server-only'
import { z } from 'zod'
import type { Prisma } from '../../db/generated/client'
import { after } from '../after.input'
import { readVersions } from '../formulas/read-version'
import { signingOfVersions } from '../formulas/signing-of-version'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'
import { stateOfDecision, type DecisionState } from './rules'

/** `stateOfDecision` as the database asks it; a test holds the two equal. */
const standing: Record<DecisionState, Prisma.DecisionWhereInput> = {
  waiting: { takenBackAt: null, outcome: 'change', OR: [{ versionId: null }, { version: { signedAt: null } }] },
  signed: { takenBackAt: null, outcome: 'change', version: { signedAt: { not: null } } },
  kept: { takenBackAt: null, outcome: 'keep' },
  'taken-back': { takenBackAt: { not: null } },
}

/** The bakery's decisions on formulas by where they stand, a page of each, the newest first; of those that wait, whose signatures are missing. */
export const listDecisions = query({
  name: 'decisions.list-decisions',
  input: z.strictObject({ after }),
  right: 'read-work',
  async run({ db, actor, now, input }) {
    const { bakeryId } = actor
    const pageOf = async (state: DecisionState) => {
      const where = { bakeryId, ...standing[state] }
      const page = await readPage({
        bakeryId,
        list: `decisions.${state}`,
        after: input.after,
        count: () => db.decision.count({ where }),
        key: z.tuple([keyParts.number]),
        read: (beyond, take) =>
          db.decision.findMany({
            where: { ...where, ...(beyond && { number: { lt: beyond[0] } }) },
            select: {
              id: true,
              number: true,
              outcome: true,
              reason: true,
              at: true,
              takenBackAt: true,
              takenBackWhy: true,
              decidedBy: { select: { name: true } },
              arm: { select: { name: true } },
              version: { select: { id: true, number: true, signedAt: true, effectiveAt: true } },
              trial: { select: { number: true, formula: { select: { name: true } } } },
            },
            orderBy: { number: 'desc' },
            take,
          }),
        keyOf: ({ number }) => [number],
      })
      const rows = page.rows.map(({ decidedBy, arm, trial, ...decision }) => ({
        ...decision,
        state: stateOfDecision(decision),
        decidedBy: decidedBy.name,
        arm: arm?.name ?? null,
        trialNumber: trial.number,
        formula: trial.formula.name,
      }))
      return { ...page, rows }
    }
    const [unsigned, signed, kept, takenBack] = await Promise.all([
      pageOf('waiting'),
      pageOf('signed'),
      pageOf('kept'),
      pageOf('taken-back'),
    ])
    const draftIds = unsigned.rows.flatMap(({ version }) => (version ? [version.id] : []))
    const drafts = draftIds.length === 0 ? [] : await readVersions(db, bakeryId, draftIds)
    const signingOf = drafts.length === 0 ? null : await signingOfVersions(db, bakeryId, drafts, now)
    const waiting = unsigned.rows.map((decision) => {
      const draft = drafts.find(({ id }) => id === decision.version?.id)
      return { ...decision, missing: signingOf && draft ? signingOf(draft).missing : [] }
    })
    return { waiting: { ...unsigned, rows: waiting }, signed, kept, takenBack }
  },
})
