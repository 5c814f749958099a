import 'server-only'
import { z } from 'zod'
import { levelOf } from '../../auth/rights'
import { query } from '../query'
import { Refusal } from '../refusal'
import { isOpen } from '../trials/rules'
import { lossesOfTrial } from './losses-of-trial'
import { repairsOfTrial } from './repairs-of-trial'

/**
 * What was lost of a trial and what was done about it, and, while it is open, what still can be: by codes and numbers of
 * mixing days, never by what a dough is. Refuses: not-found.
 */
export const getRepairs = query({
  name: 'repairs.get-repairs',
  input: z.strictObject({ trialId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, now, input: { trialId } }) {
    const { bakeryId } = actor
    const trial = await db.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: { state: true },
    })
    if (!trial) throw new Refusal('not-found')
    const [repairs, losses] = await Promise.all([
      repairsOfTrial(db, bakeryId, trialId),
      isOpen(trial.state) ? lossesOfTrial(db, { bakeryId, trialId, now }) : null,
    ])
    return {
      repairs,
      /** Doughs that can be baked again. */
      toBakeAgain: losses?.doughs.filter(({ whyNot }) => whyNot === null) ?? [],
      /** Mixing days that are short of doughs, and for which none was added. */
      shortDays: losses?.days.flatMap(({ number, short, whyNot }) => (whyNot ? [] : [{ number, short }])) ?? [],
      mayBakeAgain: levelOf(actor, 'log-reading') === 'yes',
      mayAddDay: levelOf(actor, 'approve-plan') === 'yes',
    }
  },
})
