import 'server-only'
import { z } from 'zod'
import { levelOf, type Right } from '../../auth/rights'
import { bakeryDay } from '../bakery-day'
import { query } from '../query'
import { deciders } from '../trials/hands-of-plan'
import { amendmentsToDecide } from './amendments-to-decide'
import { daysToMix, doughsUnderWay } from './doughs-that-wait'
import { entriesToSettle } from './entries-to-settle'
import { lastFoundBroken } from './last-found-broken'
import { lastNotAnchored } from './last-not-anchored'
import { plansToDecide } from './plans-to-decide'
import { lotsToConfirm, saidLots } from './lots-to-confirm'
import { newsOfStations, stationNews } from './station-news'
import { plansSentBack, trialsToClose, trialsToDecide } from './trials-that-wait'
import { versionsToSign } from './versions-to-sign'

/**
 * What waits for whoever asks, by kind: the first few of each and how many there are. A kind is null for those who
 * may not do what it waits for; what is most pressing on the floor comes first. And
 * whether the record was found broken, or could not be noted outside, for those who may read it.
 */
export const listWaiting = query({
  name: 'desk.list-waiting',
  input: z.strictObject({}),
  right: 'read-work',
  async run({ db, actor, now }) {
    const ifMay = <Found>(right: Right, read: () => Promise<Found>): Promise<Found> | null =>
      levelOf(actor, right) === 'yes' ? read() : null
    // Several kinds ask something of the bakery; it is read once for all of them.
    const bakery = db.bakery.findUniqueOrThrow({
      where: { bakeryId: actor.bakeryId },
      select: {
        timeZone: true,
        dayTurnsAtH: true,
        recordCheck: { select: { at: true, fault: true, faultNumber: true } },
        ...deciders,
        ...newsOfStations,
        ...saidLots,
      },
    })
    const [
      brokenRecord,
      notAnchored,
      underWay,
      toMix,
      toSettle,
      toConfirm,
      sentBack,
      toApprove,
      toSign,
      toAmend,
      toClose,
      toDecide,
      stations,
    ] = await Promise.all([
      ifMay('read-record', async () => lastFoundBroken((await bakery).recordCheck)),
      ifMay('read-record', () => lastNotAnchored(db)),
      ifMay('log-reading', () => doughsUnderWay(db, actor)),
      ifMay('log-reading', async () => daysToMix(db, actor, bakeryDay(now, await bakery))),
      ifMay('settle-entries', () => entriesToSettle(db, actor)),
      ifMay('edit-stores', () => lotsToConfirm(db, actor.bakeryId, bakery)),
      ifMay('propose-trial', () => plansSentBack(db, actor)),
      ifMay('approve-plan', () => plansToDecide(db, actor, bakery)),
      ifMay('sign-off-formula', () => versionsToSign(db, actor, now)),
      // Shift bakers too, where they are the witness.
      levelOf(actor, 'decide-amendment') === 'no' ? null : amendmentsToDecide(db, actor),
      ifMay('approve-plan', () => trialsToClose(db, actor)),
      ifMay('draft-formula', () => trialsToDecide(db, actor)),
      // What the head baker did with tablets is told to the owner.
      ifMay('change-settings', () => stationNews(db, actor.bakeryId, bakery)),
    ])
    return {
      brokenRecord,
      notAnchored,
      underWay,
      toMix,
      toSettle,
      toConfirm,
      sentBack,
      toApprove,
      toSign,
      toAmend,
      toClose,
      toDecide,
      stations,
    }
  },
})
