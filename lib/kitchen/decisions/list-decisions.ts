import 'server-only'
import { z } from 'zod'
import { readVersion } from '../formulas/read-version'
import { signingOfVersion } from '../formulas/signing-of-version'
import { query } from '../query'
import { stateOfDecision } from './rules'

/** The bakery's decisions on formulas by where they stand, the newest first; of those that wait, whose signatures are missing. */
export const listDecisions = query({
  name: 'decisions.list-decisions',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor, now }) {
    const { bakeryId } = actor
    const rows = await db.decision.findMany({
      where: { bakeryId },
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
      take: 1000,
    })
    const decisions = rows.map(({ decidedBy, arm, trial, ...decision }) => ({
      ...decision,
      state: stateOfDecision(decision),
      decidedBy: decidedBy.name,
      arm: arm?.name ?? null,
      trialNumber: trial.number,
      formula: trial.formula.name,
    }))
    const inState = (state: (typeof decisions)[number]['state']) => decisions.filter((each) => each.state === state)
    const waiting = []
    for (const decision of inState('waiting')) {
      const version = decision.version && (await readVersion(db, bakeryId, decision.version.id))
      waiting.push({ ...decision, missing: version ? (await signingOfVersion(db, version, now)).missing : [] })
    }
    return { waiting, signed: inState('signed'), kept: inState('kept'), takenBack: inState('taken-back') }
  },
})
