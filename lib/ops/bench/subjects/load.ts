import { performance } from 'node:perf_hooks'
import pg from 'pg'
import { db } from '../../../db/client'
import { databaseSettings } from '../../../db/settings'
import { builtDeskPages } from '../../built-routes'
import type { Demo } from '../demo'
import { atShare, ratioOf, within, type TimedPair } from '../figures'
import { findPages } from '../find-pages'
import { insertReadings } from '../insert-readings'
import { holdAgainstBook } from '../load/hold-against-book'
import { readingsOf, type LoadEntry } from '../load/places'
import { plantReaders, plantStations, type Headers } from '../load/plant-callers'
import { runLoad, sendEntries } from '../load/run-load'
import { plantLargeTrials } from '../plant-large-trials'
import type { Subject } from '../subject'
import { setTable } from '../table'

const stationCount = 50
const readerCount = 20
const seconds = 120
const mostEntryMs = 150
const loaves = 20
/** More doughs are mixed several a day. */
const mostMixingDays = 30

/** Tablets that come back together, each with its queues. */
const senders = 10
const perRequest = 100
const warmUps = 2
const rounds = 8
const leastShare = 0.5

/** Pages that somebody at a desk follows a shift by. */
const followed = ['/shift', '/shift/[batchId]', '/trials', '/trials/[trialId]']

/** Fifty stations beside twenty readers, and queues that all come at once. */
export const load: Subject = {
  name: 'load',
  async measure(openDemo) {
    const demo = await openDemo()
    const measures = await db().measure.findMany({
      where: { code: { in: ['dough-mass', 'loaf-mass', 'loaf-volume'] } },
    })
    const measure = (code: string, value: string, unit: string) => ({
      measureId: measures.find((each) => each.code === code)?.id ?? '',
      value,
      unit,
    })
    const [mass, volume, raw] = [
      measure('loaf-mass', '400', 'g'),
      measure('loaf-volume', '1600', 'mL'),
      measure('dough-mass', '480', 'g').measureId,
    ]
    return `${await shift(demo, [mass, volume])}\n\n${await saturated(demo, mass, raw)}`
  },
}

type Measure = { measureId: string; value: string; unit: string }

async function shift(demo: Demo, measures: readonly Measure[]): Promise<string> {
  const needed = stationCount * seconds
  const trial = await openTrial(Math.ceil(needed / (loaves * measures.length)), loaves)
  const whose = { bakeryId: trial.bakeryId, personId: trial.proposedById }
  const routes = builtDeskPages()
  const pages = (await findPages(routes, demo.openPage)).filter(({ route }) => followed.includes(route))
  const seen = await runLoad({
    url: demo.url,
    stations: await plantStations(demo.owner, whose, stationCount),
    readers: await plantReaders(whose, readerCount),
    pages: pages.map(({ address }) => address),
    entries: readingsOf(
      trial.batches.map(({ id: batchId }) => ({ batchId, pieces: loaves })),
      measures,
    ),
    seconds,
  })
  const { lost, changed, more } = await holdAgainstBook(
    seen.kept,
    trial.batches.map(({ id }) => id),
  )
  const faults = [...seen.faults, ...lost, ...changed, ...more]
  if (faults.length > 0) throw new Error(`${faults.length} faults under load, the first: ${faults[0]}`)
  const row = (what: string, times: readonly number[], target: string) => [
    what,
    String(times.length),
    atShare(times, 0.5).toFixed(0),
    atShare(times, 0.95).toFixed(0),
    Math.max(...times).toFixed(0),
    target,
  ]
  return setTable({
    title: 'Load',
    notes: [
      `${stationCount} stations with an entry a second each, beside ${readerCount} readers who open a page every five seconds, for ${seconds} s; milliseconds from when each was due.`,
      `Every tenth answer of a station counted as lost, and its entry came again. Held against the database afterwards: none lost, none twice. Put off: ${seen.putOff}.`,
      `Target: 95 % of the entries within ${mostEntryMs} ms on two idle cores, on which the stations and readers run as well.`,
    ],
    columns: ['what', 'times', 'median', '95 %', 'most', 'target'],
    rows: [
      row('an entry', seen.entryMs, within(atShare(seen.entryMs, 0.95), mostEntryMs)),
      row('a page', seen.pageMs, ''),
    ],
  })
}

async function saturated(demo: Demo, mass: Measure, rawMeasureId: string): Promise<string> {
  const perRound = 2 * senders
  const trial = await openTrial((warmUps + rounds) * perRound, perRequest)
  const whose = { bakeryId: trial.bakeryId, personId: trial.proposedById }
  const stations = await plantStations(demo.owner, whose, senders, 'Queue')
  const clients = await Promise.all(stations.map(() => connect()))
  const [queues, single]: [TimedPair[], TimedPair[]] = [[], []]
  try {
    for (let round = 0; round < warmUps + rounds; round++) {
      const batchIds = trial.batches.slice(round * perRound, (round + 1) * perRound).map(({ id }) => id)
      const [first, second] = [batchIds.slice(0, senders), batchIds.slice(senders)]
      const referenceMs = await timeOf(() =>
        eachDoes(clients, async (client, at) => {
          for (const ids of [first, second])
            await insertReadings(client, { trial, batchId: ids[at] ?? '', measureId: rawMeasureId, count: perRequest })
        }),
      )
      const own = (ids: readonly string[], at: number) =>
        [...readingsOf([{ batchId: ids[at] ?? '', pieces: perRequest }], [mass])] as const
      const subjectMs = await timeOf(() => eachDoes(stations, (station, at) => keep(demo.url, station, own(first, at))))
      const singleMs = await timeOf(() =>
        eachDoes(stations, async (station, at) => {
          for (const entry of own(second, at).slice(0, perRequest / 10)) await keep(demo.url, station, [entry])
        }),
      )
      if (round < warmUps) continue
      queues.push({ subjectMs: subjectMs * 2, referenceMs })
      single.push({ subjectMs: singleMs * 20, referenceMs })
    }
  } finally {
    for (const client of clients) await client.end()
  }
  const row = (what: string, pairs: readonly TimedPair[], hasTarget: boolean) => {
    const { subjectMs, referenceMs, ratio } = ratioOf(pairs)
    const entries = 2 * senders * perRequest
    const perSecond = (ms: number) => ((1_000 * entries) / ms).toFixed(0)
    return [
      what,
      perSecond(subjectMs),
      perSecond(referenceMs),
      (1 / ratio).toFixed(2),
      hasTarget ? within(ratio, 1 / leastShare) : '',
    ]
  }
  return setTable({
    title: 'Load, saturated',
    notes: [
      `Readings a second from ${senders} stations that all send at once; beside them prepared inserts of as many rows over ${senders} connections, ${perRequest} in a transaction, right before each. Medians of ${rounds} rounds.`,
      `Target: queues sent by ${perRequest} come to at least ${leastShare} of the inserts.`,
    ],
    columns: ['what', 'a second', 'inserts', 'share', 'target'],
    rows: [row(`queues by ${perRequest}`, queues, true), row('one by one', single, false)],
  })
}

async function openTrial(doughs: number, loavesEach: number) {
  const mixingDays = Math.min(mostMixingDays, doughs)
  const batchesPerArm = Math.ceil(doughs / mixingDays)
  const [id] = await plantLargeTrials(1, { mixingDays, batchesPerArm, arms: 1, loaves: loavesEach, isOpen: true })
  return db().trial.findFirstOrThrow({
    where: { id },
    select: { bakeryId: true, id: true, proposedById: true, batches: { select: { id: true } } },
  })
}

async function connect(): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: databaseSettings().url })
  await client.connect()
  return client
}

async function eachDoes<Who>(all: readonly Who[], work: (who: Who, at: number) => Promise<void>): Promise<void> {
  await Promise.all(all.map(work))
}

async function keep(url: string, station: Headers, entries: readonly LoadEntry[]): Promise<void> {
  const answers = await sendEntries(url, station, entries)
  if (answers === 'away' || !answers.every(({ outcome, isAgain }) => outcome === 'kept' && isAgain === false))
    throw new Error('a queue was not kept as it should be')
}

async function timeOf(work: () => Promise<void>): Promise<number> {
  const begun = performance.now()
  await work()
  return performance.now() - begun
}
