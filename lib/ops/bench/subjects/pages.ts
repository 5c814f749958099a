import { performance } from 'node:perf_hooks'
import { builtDeskPages } from '../../built-routes'
import type { Demo } from '../demo'
import { ratioOf, within, type TimedPair } from '../figures'
import { findPages, type FoundPage } from '../find-pages'
import type { Subject } from '../subject'
import { setTable } from '../table'

/** The choice of what equipment to add: the page's own query reads the units of one bakery, and nothing else. */
const reference = '/stores/equipment/new'
const mostRatio = 3
/** The reference is opened eighty times a round; a page that was opened three times would run code not compiled yet against it. */
const warmUps = 25
const rounds = 21

/** How long the server takes for each page, against a page with one trivial query. */
export const pages: Subject = {
  name: 'pages',
  async measure(openDemo) {
    const demo = await openDemo()
    const routes = builtDeskPages()
    const found = [{ route: '/sign-in', address: '/sign-in' }, ...(await findPages(routes, demo.openPage))].map(
      (page): FoundPage & { pairs: TimedPair[] } => ({ ...page, pairs: [] }),
    )
    for (let round = -warmUps; round < rounds; round++) {
      for (const { address, pairs } of found) {
        // What a large page leaves behind is cleared away in the request after it, which must not be one that is timed.
        await timeOf(demo, reference)
        const pair = { referenceMs: await timeOf(demo, reference), subjectMs: await timeOf(demo, address) }
        if (round >= 0) pairs.push(pair)
      }
    }
    const rows = found.map(({ route, pairs }) => {
      const { subjectMs, referenceMs, ratio } = ratioOf(pairs)
      return [route, subjectMs.toFixed(1), referenceMs.toFixed(1), ratio.toFixed(2), within(ratio, mostRatio)]
    })
    const missing = routes.filter((route) => !found.some((page) => page.route === route))
    return setTable({
      title: 'Pages',
      notes: [
        `Milliseconds until a page has come whole, over loopback, as the demo bakery's owner; medians of ${rounds} rounds, after ${warmUps} that are not counted.`,
        `The reference ${reference} asks one trivial query beside what the desk asks around every page; it is taken right before each page.`,
        `Of several addresses of a page the longest is taken. Target: at most ${mostRatio} times the reference.`,
      ],
      columns: ['page', 'ms', 'reference ms', 'ratio', 'target'],
      rows: [...rows, ...missing.map((route) => [route, '', '', '', 'no link in the demo'])],
    })
  },
}

async function timeOf(demo: Demo, address: string): Promise<number> {
  const begun = performance.now()
  if ((await demo.openPage(address)) === null) throw new Error(`${address} did not open`)
  return performance.now() - begun
}
