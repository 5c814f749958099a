import 'server-only'
import { z } from 'zod'
import { query } from '../query'
import { Refusal } from '../refusal'
import { linesToWeigh } from './lines-to-weigh'
import { planOfText } from './plan-of-text'
import { isFrozen } from './rules'
import { toConsistencyOf } from './to-consistency-of'

/**
 * The weigh-out sheets of a proposed or approved plan, one an arm: what goes into one dough, each
 * line on its scale, how its water and premixes are made, and the doughs that it is for. Refuses: not-found, also for a draft, which has no masses yet; unknown-format, damaged-text.
 */
export const getWeighOut = query({
  name: 'trials.get-weigh-out',
  input: z.strictObject({ trialId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, input: { trialId } }) {
    const { bakeryId } = actor
    const trial = await db.trial.findUnique({
      where: { bakeryId_id: { bakeryId, id: trialId } },
      select: {
        id: true,
        number: true,
        state: true,
        question: true,
        planText: true,
        planHash: true,
        arms: {
          select: {
            position: true,
            name: true,
            batches: {
              select: {
                code: true,
                cleanDownBefore: true,
                plannedOrder: true,
                state: true,
                mixingDay: { select: { number: true } },
              },
              orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
            },
          },
          orderBy: { position: 'asc' },
        },
      },
    })
    if (!trial || trial.planText === null || trial.planHash === null) throw new Refusal('not-found')
    const plan = planOfText(trial.planText, trial.planHash)
    return {
      trial: {
        id: trial.id,
        number: trial.number,
        state: trial.state,
        question: trial.question,
        isFrozen: isFrozen(trial.state),
      },
      doughTempC: plan.process.doughTempC,
      /** What was chosen for lines beside the rules. */
      chosen: { choices: plan.choices, scales: plan.scales.map(({ id, name }) => ({ id, name })) },
      arms: trial.arms.map(({ position, name, batches }) => {
        const planned = plan.arms.find((arm) => arm.position === position)
        if (!planned) throw new Error(`trial ${trialId}: the plan has no arm ${position}`)
        return {
          position,
          name,
          toWeigh: linesToWeigh(plan, planned),
          doses: planned.doses,
          toConsistency: toConsistencyOf(planned),
          batches: batches.map(({ mixingDay, ...batch }) => ({ ...batch, day: mixingDay.number })),
          allergens: planned.allergens,
          addedAllergens: planned.addedAllergens,
          uncheckedIngredients: planned.uncheckedIngredients,
          dusty: [
            ...new Set(
              planned.warnings.filter(({ code }) => code === 'dust').map(({ facts }) => String(facts.ingredient)),
            ),
          ],
          water: planned.water,
        }
      }),
    }
  },
})
