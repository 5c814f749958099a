import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { versionInProduction } from '../formulas/version-in-production'
import { query } from '../query'
import { Refusal } from '../refusal'
import { isEnded } from '../trials/rules'

/** What somebody who decides on a trial can choose, and whether somebody has decided already. Refuses: not-found. */
export const getChoices = query({
  name: 'decisions.get-choices',
  input: z.strictObject({ trialId: z.uuid() }),
  right: 'draft-formula',
  async run({ db, actor, now, input: { trialId } }) {
    const { bakeryId } = actor
    const trial = await db.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: {
        id: true,
        number: true,
        state: true,
        revision: true,
        formulaId: true,
        controlVersion: { select: { id: true, number: true } },
        arms: {
          where: { position: { gt: 0 } },
          select: { id: true, position: true, name: true },
          orderBy: { position: 'asc' },
        },
        outcomes: {
          where: { takenBackAt: null },
          select: { id: true, number: true, decidedBy: { select: { name: true } } },
        },
      },
    })
    if (!trial) throw new Refusal('not-found')
    const { outcomes, formulaId, state, ...rest } = trial
    const [standing] = outcomes
    const inProduction = await versionInProduction(db, bakeryId, formulaId, now)
    return {
      trial: rest,
      isEnded: isEnded(state),
      decision: standing ? { id: standing.id, number: standing.number, decidedBy: standing.decidedBy.name } : null,
      inProduction: inProduction && { id: inProduction.id, number: inProduction.number },
      mayKeep: levelOf(actor, 'sign-off-formula') === 'yes',
    }
  },
})
