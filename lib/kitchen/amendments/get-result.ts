import 'server-only'
import { z } from 'zod'
import { dayInZone } from '../day-in-zone'
import { firstInTurn } from '../heavy/first-in-turn'
import { query } from '../query'
import { aroundReadings } from '../results/around-readings'
import { loadEvidence, readTrial } from '../results/load-evidence'
import { resultOf } from '../results/result-of'
import { calendarDay } from '../text.input'
import { isEnded } from '../trials/rules'
import { afterClosing, readAfterClosing } from './after-closing'

const firstLook = firstInTurn(1000)

/**
 * What a trial showed, and what came after its readings were closed. Its costs are at the prices of a day, the bakery's
 * today unless one is named.
 * Refuses: not-found, took-too-long, not-worked-out.
 */
export const getResult = query({
  name: 'amendments.get-result',
  input: z.strictObject({ trialId: z.uuid(), pricesOn: calendarDay.optional() }),
  right: 'read-work',
  run: ({ db, actor, now, input: { trialId, pricesOn } }) =>
    firstLook(trialId, async () => {
      const { bakeryId } = actor
      const reading = readTrial(db, bakeryId, trialId)
      // Beside the seal of its rows, which takes the database the longest.
      const [evidence, around, amending] = await Promise.all([
        loadEvidence(db, bakeryId, trialId, reading),
        aroundReadings(db, { bakeryId, trialId, now }, reading),
        reading.then((trial) => (trial && isEnded(trial.state) ? readAfterClosing(db, bakeryId, trialId) : null)),
      ])
      const day = pricesOn ?? dayInZone(now, evidence.timeZone)
      const [result, after] = await Promise.all([
        resultOf(db, actor, { ...evidence, ...around }, day),
        afterClosing(db, actor, trialId, evidence.found, amending),
      ])
      return { ...result, after }
    }),
})
