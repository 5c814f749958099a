import { performance } from 'node:perf_hooks'
import { setTimeout as wait } from 'node:timers/promises'
import type { Headers } from './plant-callers'
import type { LoadEntry } from './places'

export type Load = {
  url: string
  stations: readonly Headers[]
  readers: readonly Headers[]
  /** What the readers open, in turn. */
  pages: readonly string[]
  entries: Iterator<LoadEntry>
  seconds: number
}

/** What was seen from without. */
export type LoadSeen = {
  /** What the book said it has: the entry's id, and its hash. */
  kept: Map<string, string>
  /** Entries whose answer counted as lost, so that they were sent again. */
  sentAgain: number
  /** Answers that the book is away for now, after which a tablet comes again. */
  putOff: number
  /** What should not have happened, in words. */
  faults: string[]
  /** From when an entry was due until its answer, ms. */
  entryMs: number[]
  pageMs: number[]
}

const entryEveryMs = 1_000
const pageEveryMs = 5_000
/** Of so many answers one is lost. */
const lostOf = 10
/** The least after which a tablet comes again. */
const putOffMs = 1_000

/**
 * Stations that each bring one entry a second, the next one only after the answer to the one before, beside readers who
 * each open a page every five seconds. Every tenth answer of a station is lost, and its entry comes again at once. Ends by
 * itself. @returns when the last answer is there
 */
export async function runLoad(load: Load): Promise<LoadSeen> {
  const seen: LoadSeen = { kept: new Map(), sentAgain: 0, putOff: 0, faults: [], entryMs: [], pageMs: [] }
  const begun = performance.now()
  const endsAt = begun + load.seconds * 1_000
  await Promise.all([
    ...load.stations.map((station, at) =>
      inTime(begun + (at / load.stations.length) * entryEveryMs, entryEveryMs, endsAt, async (dueAt, turn) => {
        const next = load.entries.next()
        if (next.done) throw new Error('the load has no places left')
        const entry = next.value
        await bring(load.url, station, entry, seen)
        seen.entryMs.push(performance.now() - dueAt)
        if ((turn + at) % lostOf !== 0) return
        seen.sentAgain += 1
        await bring(load.url, station, entry, seen)
      }),
    ),
    ...load.readers.map((reader, at) =>
      inTime(begun + (at / load.readers.length) * pageEveryMs, pageEveryMs, endsAt, async (dueAt, turn) => {
        const page = load.pages[(turn + at) % load.pages.length] ?? '/'
        const response = await fetch(`${load.url}${page}`, { headers: reader, redirect: 'manual' })
        await response.arrayBuffer()
        if (response.status === 503) seen.putOff += 1
        else if (response.status !== 200) seen.faults.push(`${page} answered ${response.status}`)
        seen.pageMs.push(performance.now() - dueAt)
      }),
    ),
  ])
  return seen
}

/** Does something every so often; what is late waits for the one before, and counts from when it was due. */
async function inTime(
  firstAt: number,
  everyMs: number,
  endsAt: number,
  work: (dueAt: number, turn: number) => Promise<void>,
): Promise<void> {
  for (let turn = 0; ; turn++) {
    const dueAt = firstAt + turn * everyMs
    if (dueAt >= endsAt) return
    const ahead = dueAt - performance.now()
    if (ahead > 0) await wait(ahead)
    await work(dueAt, turn)
  }
}

async function bring(url: string, station: Headers, entry: LoadEntry, seen: LoadSeen): Promise<void> {
  let answers = await sendEntries(url, station, [entry])
  while (answers === 'away') {
    seen.putOff += 1
    await wait(putOffMs)
    answers = await sendEntries(url, station, [entry])
  }
  const [answer] = answers
  if (answer?.outcome !== 'kept' || answer.id !== entry.id || answer.hash === undefined) {
    seen.faults.push(`an entry was answered ${JSON.stringify(answer)}`)
    return
  }
  const before = seen.kept.get(answer.id)
  // One that was put off may be there from before, as its answer says.
  if (before !== undefined && answer.isAgain !== true) seen.faults.push('an entry was kept anew')
  if (before !== undefined && before !== answer.hash) seen.faults.push('the hash of an entry changed')
  seen.kept.set(answer.id, answer.hash)
}

type Answered = { outcome?: string; id?: string; hash?: string; isAgain?: boolean }

/**
 * Sends entries in one request, as a tablet does.
 * @returns what is answered of each; 'away' where the book asks to come again
 * @throws Error when the answer is neither
 */
export async function sendEntries(
  url: string,
  station: Headers,
  entries: readonly LoadEntry[],
): Promise<Answered[] | 'away'> {
  const response = await fetch(`${url}/api/v1/entries`, {
    method: 'POST',
    headers: { ...station, Origin: url, 'Content-Type': 'application/json' },
    body: JSON.stringify({ entries }),
  })
  const body = (await response.json()) as { entries?: Answered[]; refusal?: string }
  if (response.status === 503) return 'away'
  if (!body.entries) throw new Error(`the book answered ${response.status} ${body.refusal}`)
  return body.entries
}
