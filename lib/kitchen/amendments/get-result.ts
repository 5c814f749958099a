import 'server-only'
import { z } from 'zod'
import { dayInZone } from '../day-in-zone'
import { firstInTurn } from '../heavy/first-in-turn'
import { query } from '../query'
import { loadEvidence } from '../results/load-evidence'
import { resultOf } from '../results/result-of'
import { calendarDay } from '../text.input'
import { afterClosing } from './after-closing'

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
      const evidence = await loadEvidence(db, actor.bakeryId, trialId)
      const [result, after] = await Promise.all([
        resultOf(db, actor, now, evidence, pricesOn ?? dayInZone(now, evidence.timeZone)),
        afterClosing(db, actor, trialId, evidence.found),
      ])
      return { ...result, after }
    }),
})
