import 'server-only'
import { z } from 'zod'
import { knowsKey } from '../key/knows-key'
import { query } from '../query'
import { Refusal } from '../refusal'
import { linesToWeigh } from './lines-to-weigh'
import { planOfText } from './plan-of-text'
import { isFrozen, isKeyOpen } from './rules'
import { toConsistencyOf } from './to-consistency-of'

/**
 * The weigh-out sheets of a proposed or approved plan, one an arm: what goes into one dough, each line on its scale, how
 * its water and premixes are made, and the doughs that it is for. They are the key, so until the readings are closed
 * there are none for whoever has not opened it.
 * Refuses: not-found, also for a draft, which has no masses yet; unknown-format, damaged-text.
 */
export const getWeighOut = query({
  name: 'trials.get-weigh-out',
  input: z.strictObject({ trialId: z.uuid() }),
  right: 'read-work',
  async run({ db, actor, input: { trialId } }) {
    const { bakeryId, personId } = actor
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
    const { planHash } = trial
    const plan = planOfText(trial.planText, planHash)
    const isKey = !isKeyOpen(trial.state)
    const isShown = !isKey || (await knowsKey(db, { bakeryId, trialId, planHash, personId }))
    return {
      trial: {
        id: trial.id,
        number: trial.number,
        state: trial.state,
        question: trial.question,
        isFrozen: isFrozen(trial.state),
        planHash,
      },
      /** Whether the sheets tell what only those who opened the key may know. */
      isKey,
      doughTempC: plan.process.doughTempC,
      /** What was chosen for lines beside the rules. */
      chosen: { choices: plan.choices, scales: plan.scales.map(({ id, name }) => ({ id, name })) },
      /** Null as long as whoever asks has not opened the key. */
      arms: isShown
        ? trial.arms.map(({ position, name, batches }) => {
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
          })
        : null,
    }
  },
})
