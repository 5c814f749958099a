import { performance } from 'node:perf_hooks'
import pg from 'pg'
import { v7 as uuid } from 'uuid'
import { must } from '../../../../seed/must'
import { db } from '../../../db/client'
import { databaseSettings } from '../../../db/settings'
import type { Caller } from '../../../kitchen/caller'
import { takeEntries } from '../../../kitchen/intake/take-entries'
import { logReading } from '../../../kitchen/readings/log-reading'
import { ratioOf, within, type TimedPair } from '../figures'
import { insertReadings } from '../insert-readings'
import { plantLargeTrials } from '../plant-large-trials'
import type { Subject } from '../subject'
import { setTable } from '../table'

const perRequest = 100
const mostRatio = 2
const warmUps = 3
const rounds = 15
/** So many are logged by a command each, since a hundred take seconds. */
const byCommand = 10

/** A hundred readings in one request, beside a hundred inserts that judge nothing. */
export const entries: Subject = {
  name: 'entries',
  async measure(openDemo) {
    const { owner } = await openDemo()
    const [trialId] = await plantLargeTrials(1, {
      mixingDays: warmUps + rounds,
      batchesPerArm: 1,
      arms: 1,
      loaves: perRequest,
      isOpen: true,
    })
    const trial = await db().trial.findFirstOrThrow({
      where: { id: trialId },
      select: { bakeryId: true, id: true, proposedById: true, batches: { select: { id: true } } },
    })
    const measures = await db().measure.findMany({
      where: { bakeryId: trial.bakeryId, code: { in: ['dough-mass', 'loaf-mass', 'loaf-volume'] } },
      select: { id: true, code: true },
    })
    const measureId = (code: string) => measures.find((measure) => measure.code === code)?.id ?? ''
    const client = new pg.Client({ connectionString: databaseSettings().url })
    await client.connect()
    const [first, again, each]: [TimedPair[], TimedPair[], TimedPair[]] = [[], [], []]
    try {
      for (const [round, { id: batchId }] of trial.batches.entries()) {
        const referenceMs = await timeOf(() =>
          insertReadings(client, { trial, batchId, measureId: measureId('dough-mass'), count: perRequest }),
        )
        const sent = Array.from({ length: perRequest }, (_, i) => ({
          kind: 'reading',
          ...entry(batchId, measureId('loaf-mass'), i + 1, '400', 'g'),
        }))
        const firstMs = await timeOf(() => mustKeep(owner, sent, false))
        const rows = await rowsOfAllTables(client)
        const againMs = await timeOf(() => mustKeep(owner, sent, true))
        if ((await rowsOfAllTables(client)) !== rows) throw new Error('a request that came again wrote a row')
        const eachMs = await timeOf(async () => {
          for (let i = 0; i < byCommand; i++)
            must(await logReading.call(owner, entry(batchId, measureId('loaf-volume'), i + 1, '1600', 'mL')))
        })
        if (round < warmUps) continue
        first.push({ subjectMs: firstMs, referenceMs })
        again.push({ subjectMs: againMs, referenceMs })
        each.push({ subjectMs: (eachMs * perRequest) / byCommand, referenceMs })
      }
    } finally {
      await client.end()
    }
    const row = (what: string, pairs: readonly TimedPair[], hasTarget: boolean) => {
      const { subjectMs, referenceMs, ratio } = ratioOf(pairs)
      return [
        what,
        subjectMs.toFixed(1),
        referenceMs.toFixed(1),
        ratio.toFixed(2),
        hasTarget ? within(ratio, mostRatio) : '',
      ]
    }
    return setTable({
      title: 'Entries from outside',
      notes: [
        `Milliseconds for ${perRequest} readings, medians of ${rounds} rounds, without the way over HTTP; beside them ${perRequest} prepared inserts of rows that are ready, in one transaction, right before each.`,
        `Target: a request at most ${mostRatio} times the inserts; the same again writes no row of any table (counted).`,
      ],
      columns: ['what', 'median', 'inserts', 'ratio', 'target'],
      rows: [
        row('one request', first, true),
        row('the same again', again, true),
        row(`a command each (${byCommand}, times ${perRequest / byCommand})`, each, false),
      ],
    })
  },
}

function entry(batchId: string, measureId: string, piece: number, value: string, unit: string) {
  return {
    id: uuid(),
    batchId,
    measureId,
    piece,
    repeat: 1,
    value,
    unit,
    takenAt: new Date().toISOString(),
    confirmed: true,
  }
}

async function mustKeep(owner: Caller, sent: readonly object[], isAgain: boolean): Promise<void> {
  const answered = must(await takeEntries.call(owner, { entries: sent })).entries
  if (!answered.every((each) => each.outcome === 'kept' && each.isAgain === isAgain))
    throw new Error('a reading was not kept as it should be')
}

async function rowsOfAllTables(client: pg.Client): Promise<string> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT quote_ident(tablename) AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1`,
  )
  const counts = await client.query<{ n: string }>(
    rows.map(({ name }) => `SELECT count(*) AS n FROM ${name}`).join(' UNION ALL '),
  )
  return counts.rows.map(({ n }) => n).join(' ')
}

async function timeOf(work: () => Promise<void>): Promise<number> {
  const begun = performance.now()
  await work()
  return performance.now() - begun
}
