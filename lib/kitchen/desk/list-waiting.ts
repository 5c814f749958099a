import 'server-only'
import { z } from 'zod'
import { levelOf, type Right } from '../../auth/rights'
import { dayInZone } from '../day-in-zone'
import { query } from '../query'
import { daysToMix, doughsUnderWay } from './doughs-that-wait'
import { lastFoundBroken } from './last-found-broken'
import { plansToDecide } from './plans-to-decide'
import { plansSentBack, trialsToClose, trialsToDecide } from './trials-that-wait'
import { versionsToSign } from './versions-to-sign'

/**
 * What waits for whoever asks, by kind: the first few of each and how many there are. A kind is null for those who
 * may not do what it waits for; what is most pressing on the floor comes first. And
 * whether the record was found broken, for those who may read it.
 */
export const listWaiting = query({
  name: 'desk.list-waiting',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor, now }) {
    const ifMay = <Found>(right: Right, read: () => Promise<Found>): Promise<Found> | null =>
      levelOf(actor, right) === 'yes' ? read() : null
    const dueToday = async () => {
      const { timeZone } = await db.bakery.findUniqueOrThrow({
        where: { bakeryId: actor.bakeryId },
        select: { timeZone: true },
      })
      return daysToMix(db, actor, dayInZone(now, timeZone))
    }
    const [brokenRecord, underWay, toMix, sentBack, toApprove, toSign, toClose, toDecide] = await Promise.all([
      ifMay('read-record', () => lastFoundBroken(db, actor)),
      ifMay('log-reading', () => doughsUnderWay(db, actor)),
      ifMay('log-reading', dueToday),
      ifMay('propose-trial', () => plansSentBack(db, actor)),
      ifMay('approve-plan', () => plansToDecide(db, actor)),
      ifMay('sign-off-formula', () => versionsToSign(db, actor, now)),
      ifMay('approve-plan', () => trialsToClose(db, actor)),
      ifMay('draft-formula', () => trialsToDecide(db, actor)),
    ])
    return { brokenRecord, underWay, toMix, sentBack, toApprove, toSign, toClose, toDecide }
  },
})
