import 'server-only'
import { z } from 'zod'
import type { Db } from '../../db/client'
import { readReading } from '../../documents/reading/read-reading'
import { after } from '../after.input'
import { keyParts } from '../page-cursor'
import { query } from '../query'
import { readPage } from '../read-page'
import { isOpen } from '../trials/rules'
import { isToSettle } from './is-to-settle'
import { loadRangeFacts } from './load-range-facts'
import { everyMeasure } from './measures-to-read'
import { plausibleRange, type PlausibleRange, type RangeFacts } from './plausible-range'
import { readEnteredValue } from './read-entered-value'
import { levelOfPiece } from './rules'
import { standingFor } from './standing-for'
import { toBaseUnit } from './to-base-unit'

/** Each with a form of its own, so a screen holds few. */
const entriesOnPage = 20

/** Why an entry cannot go into the book; it can be left. */
type TakeBar = 'unknown-format' | 'damaged-text' | 'trial-over' | 'settle-reading-first' | 'weighing'

/**
 * Entries from outside that came too late for their place and that nobody has settled, a page at a time, those that came
 * first at the top: each with what was entered, by whom and when, whether that is usual, why it was put aside, and the
 * reading that stands where it belongs. They go by the codes of their batches; which dough is which is not told here.
 */
export const listKeptAside = query({
  name: 'readings.list-kept-aside',
  input: z.strictObject({ after }),
  right: 'settle-entries',
  async run({ db, actor: { bakeryId }, input }) {
    const open = { bakeryId, ...isToSettle }
    const page = await readPage({
      bakeryId,
      list: 'kept-aside',
      after: input.after,
      count: () => db.entryToSettle.count({ where: open }),
      length: entriesOnPage,
      key: z.tuple([keyParts.time, keyParts.id, keyParts.text]),
      read: (beyond, take) =>
        db.entryToSettle.findMany({
          where: { ...open, ...(beyond && behind(...beyond)) },
          select: {
            entryId: true,
            hash: true,
            kind: true,
            text: true,
            why: true,
            receivedAt: true,
            sentBy: { select: { name: true } },
            batch: {
              select: {
                id: true,
                code: true,
                trial: {
                  select: {
                    id: true,
                    number: true,
                    state: true,
                    factorLevels: true,
                    formula: { select: { name: true } },
                  },
                },
              },
            },
          },
          orderBy: [{ receivedAt: 'asc' }, { entryId: 'asc' }, { hash: 'asc' }],
          take,
        }),
      keyOf: ({ receivedAt, entryId, hash }) => [receivedAt.toISOString(), entryId, hash],
    })
    const read = page.rows.map(({ text, kind, ...row }) => ({
      row,
      read: kind === 'weighing' ? ({ outcome: 'weighing' } as const) : readReading(text, row.hash),
    }))
    const contents = read.flatMap((each) => (each.read.outcome === 'read' ? [each.read.reading] : []))
    const standingIds = await standingFor(db, bakeryId, contents)
    const [readings, measures] = await Promise.all([
      readingsOf(db, bakeryId, standingIds),
      contents.length > 0 ? everyMeasure(db, bakeryId) : [],
    ])
    const ranges = new Map<string, RangeFacts>()
    for (const { row, read: entry } of read) {
      const trialId = row.batch.trial.id
      if (entry.outcome === 'read' && !ranges.has(trialId))
        ranges.set(trialId, await loadRangeFacts(db, bakeryId, { trialId }, measures))
    }
    const rows = read.map(({ row: { batch, sentBy, ...row }, read: entry }) => {
      const { trial, ...dough } = batch
      const shared = {
        ...row,
        sentBy: sentBy.name,
        batch: dough,
        trial: { number: trial.number, formula: trial.formula.name },
      }
      if (entry.outcome !== 'read') {
        // What was weighed says which dough it is, so it is not shown here.
        const bar: TakeBar = entry.outcome === 'damaged' ? 'damaged-text' : entry.outcome
        return { ...shared, entered: null, standing: null, bar }
      }
      const { value, unit, piece, repeat, factorLevel, takenAt, measure, supersedes, reason } = entry.reading
      const standing = readings.get(standingIds[contents.indexOf(entry.reading)] ?? '') ?? null
      const measured = measures.find(({ id }) => id === (measure?.toLowerCase() ?? standing?.measureId))
      const ofTrial = ranges.get(trial.id)
      const range = measured && ofTrial ? plausibleRange(measured, ofTrial) : null
      const bar: TakeBar | null = !isOpen(trial.state)
        ? 'trial-over'
        : supersedes !== null && standing === null
          ? 'settle-reading-first'
          : null
      return {
        ...shared,
        entered: {
          value,
          unit,
          piece,
          repeat,
          // A correction says no level: it goes with the piece.
          factorLevel: factorLevel ?? (piece === null ? null : levelOfPiece(piece, trial.factorLevels)),
          measure: measured
            ? { code: measured.code, name: measured.name, unit: measured.unit, digits: measured.digits }
            : null,
          /** The range that it is outside of; null when it is within, or is no amount of the measure at all. */
          outside: measured && range && isBeyond(range, entry.reading, measured.unit) ? range : null,
          /** Null for a correction, which keeps the time of the reading that it corrects. */
          takenAt: takenAt === null ? null : new Date(takenAt),
          reason,
        },
        standing,
        bar,
      }
    })
    return { ...page, rows }
  },
})

/** An entry may be aside before anybody looked whether it is a number. */
function isBeyond(
  { least, most }: PlausibleRange,
  entered: { value: string; unit: string },
  baseUnit: string,
): boolean {
  const read = readEnteredValue(entered.value)
  const value = 'fault' in read ? undefined : toBaseUnit({ number: read.number, unit: entered.unit, baseUnit })
  return value !== undefined && (value < least || value > most)
}

/** What comes after a row in the order of the list. */
function behind(receivedAt: Date, entryId: string, hash: string) {
  return {
    OR: [
      { receivedAt: { gt: receivedAt } },
      { receivedAt, entryId: { gt: entryId } },
      { receivedAt, entryId, hash: { gt: hash } },
    ],
  }
}

async function readingsOf(db: Db, bakeryId: string, standingIds: readonly (string | null)[]) {
  const ids = standingIds.flatMap((id) => (id === null ? [] : [id]))
  if (ids.length === 0) return new Map<string, never>()
  const found = await db.reading.findMany({
    where: { bakeryId, id: { in: ids } },
    select: {
      id: true,
      measureId: true,
      piece: true,
      factorLevel: true,
      repeat: true,
      valueEntered: true,
      unitEntered: true,
      takenAt: true,
      reason: true,
      person: { select: { name: true } },
    },
  })
  return new Map(found.map(({ person, ...reading }) => [reading.id, { ...reading, by: person.name }]))
}
