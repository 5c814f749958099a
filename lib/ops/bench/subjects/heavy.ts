import { performance } from 'node:perf_hooks'
import { setTimeout as wait } from 'node:timers/promises'
import { median } from '../../../calc/median'
import type { Demo } from '../demo'
import { within } from '../figures'
import { plantLargeTrials } from '../plant-large-trials'
import type { Subject } from '../subject'
import { setTable } from '../table'

const reference = '/stores/equipment/new'
const results = 10
const mostRatio = 2
const warmUps = 10
const rounds = 101
/** Between two looks at the trivial page, as people leave it. */
const betweenMs = 20

/** What a trivial page takes while many results of the largest size are worked out. */
export const heavy: Subject = {
  name: 'heavy',
  async measure(openDemo) {
    const demo = await openDemo()
    const trials = await plantLargeTrials(results)
    for (let i = 0; i < warmUps; i++) await timeOf(demo, reference)
    const alone: number[] = []
    for (let i = 0; i < rounds; i++) alone.push(await timeOf(demo, reference))

    let open = results
    const begun = performance.now()
    const opened = Promise.all(trials.map((id) => timeOf(demo, `/trials/${id}/result`).finally(() => open--)))
    // A result that fails fails the whole, below.
    opened.catch(() => undefined)
    const beside: number[] = []
    while (open > 0) {
      beside.push(await timeOf(demo, reference))
      await wait(betweenMs)
    }
    const resultsMs = await opened
    const allS = (performance.now() - begun) / 1000

    const again: number[] = []
    for (const id of trials) again.push(await timeOf(demo, `/trials/${id}/result`))
    const row = (what: string, times: readonly number[], target: boolean) => {
      const ratio = median(times) / median(alone)
      return [what, String(times.length), median(times).toFixed(1), share(times, 0.95).toFixed(1), Math.max(...times).toFixed(1), ratio.toFixed(2), target ? within(ratio, mostRatio) : '']
    }
    return setTable({
      title: 'Heavy work',
      notes: [
        `Milliseconds until ${reference} has come whole: alone, and while ${results} results of the largest size (840 doughs of seven kinds, a fifth of them lost) are asked for at once.`,
        `All ${results} took ${allS.toFixed(1)} s. Target: the median beside them at most ${mostRatio} times the median alone, in one run.`,
      ],
      columns: ['page', 'times', 'median', '95 %', 'most', 'ratio', 'target'],
      rows: [row('trivial page, alone', alone, false), row('trivial page, beside them', beside, true), row('a result, worked out', resultsMs, false), row('the same, looked at again', again, false)],
    })
  },
}

/** The value that so many of them are at or below. */
function share(times: readonly number[], part: number): number {
  return times.toSorted((a, b) => a - b)[Math.ceil(part * times.length) - 1] ?? 0
}

async function timeOf(demo: Demo, address: string): Promise<number> {
  const begun = performance.now()
  if ((await demo.openPage(address)) === null) throw new Error(`${address} did not open`)
  return performance.now() - begun
}
