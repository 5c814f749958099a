import { performance } from 'node:perf_hooks'
import { setTimeout as wait } from 'node:timers/promises'
import { median } from '../../../calc/median'
import type { Demo } from '../demo'
import { atShare, within } from '../figures'
import { plantLargeTrials, type TrialSize } from '../plant-large-trials'
import type { Subject } from '../subject'
import { setTable } from '../table'

const reference = '/stores/equipment/new'
const results = 10
const mostRatio = 2
const warmUps = 10
const rounds = 25
/** From one look at the trivial page to the next, answered or not: who waits keeps nobody else from asking. */
const everyMs = 200

/** Seven kinds of dough. The first takes as long to work out as the second, which is far more to read and to show. */
const sizes: readonly [string, TrialSize][] = [
  ['84 doughs', { mixingDays: 12, batchesPerArm: 1, arms: 7, loaves: 4 }],
  ['840 doughs', { mixingDays: 30, batchesPerArm: 4, arms: 7, loaves: 4 }],
]

/** What a trivial page takes while many of the dearest results are worked out. */
export const heavy: Subject = {
  name: 'heavy',
  async measure(openDemo) {
    const demo = await openDemo()
    const rows: string[][] = []
    for (const [what, size] of sizes) rows.push(...(await rowsOf(demo, what, size)))
    return setTable({
      title: 'Heavy work',
      notes: [
        `Milliseconds until ${reference} has come whole: alone, and while ${results} results are asked for at once that nobody looked at before; asked for every ${everyMs} ms, answered or not.`,
        `Results of trials of seven kinds of dough, a fifth of the doughs lost. Target: the median beside them at most ${mostRatio} times the median alone, in one run.`,
      ],
      columns: ['page', 'times', 'median', '95 %', 'most', 'ratio', 'target'],
      rows,
    })
  },
}

async function rowsOf(demo: Demo, what: string, size: TrialSize): Promise<string[][]> {
  const trials = await plantLargeTrials(results, size)
  for (let i = 0; i < warmUps; i++) await timeOf(demo, reference)
  const alone = await timesOf(demo, (asked) => asked === rounds)

  let open = results
  const opened = Promise.all(trials.map((id) => timeOf(demo, `/trials/${id}/result`).finally(() => open--)))
  const [first, beside] = await Promise.all([opened, timesOf(demo, () => open === 0)])
  const again: number[] = []
  for (const id of trials) again.push(await timeOf(demo, `/trials/${id}/result`))

  const row = (page: string, times: readonly number[], hasTarget = false) => {
    const ratio = median(times) / median(alone)
    return [
      page,
      String(times.length),
      median(times).toFixed(1),
      atShare(times, 0.95).toFixed(1),
      Math.max(...times).toFixed(1),
      ratio.toFixed(2),
      hasTarget ? within(ratio, mostRatio) : '',
    ]
  }
  return [
    row('trivial page, alone', alone),
    row(`trivial page, beside ${results} of ${what}`, beside, true),
    row(`result of ${what}, worked out`, first),
    row('the same, looked at again', again),
  ]
}

/** Times of the trivial page, asked for again and again until that is over. */
async function timesOf(demo: Demo, isOver: (asked: number) => boolean): Promise<number[]> {
  const asked: Promise<number>[] = []
  while (!isOver(asked.length)) {
    asked.push(timeOf(demo, reference))
    await wait(everyMs)
  }
  return Promise.all(asked)
}

async function timeOf(demo: Demo, address: string): Promise<number> {
  const begun = performance.now()
  if ((await demo.openPage(address)) === null) throw new Error(`${address} did not open`)
  return performance.now() - begun
}
