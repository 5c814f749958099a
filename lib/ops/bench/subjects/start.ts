import { median } from '../../../calc/median'
import { within } from '../figures'
import type { Subject } from '../subject'
import { setTable } from '../table'

const mostLaterStartS = 10

/** How long `npm start` takes until somebody can sign in. */
export const start: Subject = {
  name: 'start',
  async measure(openDemo) {
    const { firstStartS, laterStartsS } = await openDemo()
    const laterS = median(laterStartsS)
    return setTable({
      title: 'Start',
      notes: [
        `Seconds from npm start until /sign-in answers 200, with packages and build there. Target: a later start in at most ${mostLaterStartS} s.`,
      ],
      columns: ['start', 's', 'target'],
      rows: [
        ['first, in an empty data folder, filling the demo bakery', firstStartS.toFixed(1), ''],
        [`later, nothing to do (median of ${laterStartsS.length})`, laterS.toFixed(1), within(laterS, mostLaterStartS)],
      ],
    })
  },
}
