import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../../command'
import { clockToleranceMs } from '../../conduct/odd-time'
import { judgeEach } from '../../judge-each'
import { Refusal } from '../../refusal'
import { judgeReading } from '../judge-reading'
import { refusalOfAside } from '../keep-one-reading'
import { keepReadings } from '../keep-readings'
import { loadReadingFacts } from '../load-reading-facts'
import { noteReading } from '../reading-facts'
import { timeFault } from '../rules'
import { keyInSheetInput } from './key-in-sheet.input'

/**
 * Puts readings of one dough that were written on paper into the book: all of them or none. Each is a reading as any other,
 * taken when the paper says, entered by whoever puts it in, and marked with who wrote it.
 * Refuses: not-found, nothing-on-sheet, trial-not-approved, trial-closed, trial-stopped, batch-not-begun, batch-not-baked,
 * no-further-repeat, odd-reading, reading-there, and what is wrong at a field.
 */
export const keyInSheet = command({
  name: 'readings.key-in-sheet',
  input: keyInSheetInput,
  right: 'log-reading',
  async run({ tx, actor, now, input: { batchId, writtenById, writtenAt, lines, confirmed } }) {
    const { bakeryId, personId } = actor
    const takenAt = writtenAt.toISOString()
    const entries = lines.flatMap(({ value, ...line }, at) =>
      value === null ? [] : [{ at, entry: { ...line, id: uuid(), batchId, value, takenAt, confirmed } }],
    )
    if (entries.length === 0) throw new Refusal('nothing-on-sheet')
    const facts = await loadReadingFacts(
      tx,
      bakeryId,
      entries.map(({ entry }) => entry),
    )
    const batch = facts.batches.get(batchId.toLowerCase())
    if (!batch) throw new Refusal('not-found')
    const writer = await tx.person.findUnique({
      where: { bakeryId_id: { bakeryId, id: writtenById } },
      select: { id: true, name: true },
    })
    if (!writer) throw Refusal.at('writtenById', 'wrong-choice')
    if (writtenAt.getTime() > now.getTime() + clockToleranceMs) throw Refusal.at('writtenAt', 'written-ahead')
    if (timeFault(writtenAt, now, batch.trial.createdAt)) throw Refusal.at('writtenAt', 'row-before-the-trial')
    const ready = await judgeEach(
      entries,
      async ({ entry }) => {
        const verdict = judgeReading(entry, facts, { actor, now })
        if (verdict.outcome === 'aside') {
          const { code } = await refusalOfAside(tx, bakeryId, entry, verdict)
          if (verdict.why !== 'place_taken') throw new Refusal(code)
          throw new Refusal(code, {}, [{ path: 'value', code: 'reading-there', facts: {} }])
        }
        if (verdict.outcome !== 'ready') throw new Error('an id that was made just now was there already')
        noteReading(facts, verdict.row)
        return verdict
      },
      (problem, { at }) => ({ ...problem, path: `lines.${at}.${problem.path}` }),
    )
    await keepReadings(
      tx,
      ready.map(({ row }) => row),
    )
    const sheetId = uuid()
    await tx.paperSheet.create({
      data: {
        bakeryId,
        id: sheetId,
        trialId: batch.trialId,
        batchId: batch.id,
        writtenById: writer.id,
        writtenAt,
        keyedById: personId,
        keyedAt: now,
      },
    })
    await tx.sheetReading.createMany({ data: ready.map(({ row }) => ({ bakeryId, sheetId, readingId: row.id })) })
    return {
      value: { kept: ready.length },
      audit: {
        target: batch.id,
        after: {
          batch: batch.code,
          sheet: sheetId,
          writtenBy: writer.name,
          writtenAt: takenAt,
          readings: ready.map(({ note }) => note.after),
        },
      },
    }
  },
})
