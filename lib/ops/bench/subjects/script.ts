import { builtDeskPages } from '../../built-routes'
import { within } from '../figures'
import { findPages } from '../find-pages'
import { bareAddress, mostAboveBareKb, scriptSizer } from '../script-size'
import type { Subject } from '../subject'
import { setTable } from '../table'

/** How much script each page of the desk loads when it is opened first. */
export const script: Subject = {
  name: 'script',
  async measure(openDemo) {
    const { url, openPage } = await openDemo()
    const sizeOf = scriptSizer(async (source) => new Uint8Array(await (await fetch(`${url}${source}`)).arrayBuffer()))
    const bareKb = await sizeOf(await (await fetch(`${url}${bareAddress}`)).text())
    const rows: string[][] = []
    for (const { route, address } of await findPages(builtDeskPages(), openPage)) {
      const kb = await sizeOf((await openPage(address)) ?? '')
      rows.push([route, kb.toFixed(1), (kb - bareKb).toFixed(1), within(kb - bareKb, mostAboveBareKb)])
    }
    return setTable({
      title: 'Script',
      notes: [
        `Script of a first visit, kB (1000 bytes), each file compressed with gzip. A bare page loads ${bareKb.toFixed(1)} kB. Target: at most ${mostAboveBareKb} kB above it.`,
      ],
      columns: ['page', 'kB', 'above bare', 'target'],
      rows,
    })
  },
}
