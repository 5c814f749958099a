import 'server-only'
import { v7 as uuid } from 'uuid'
import { levelOf } from '../../auth/rights'
import type { Tx } from '../../db/client'
import { readReading } from '../../documents/reading/read-reading'
import type { ReadingContent } from '../../documents/reading/text-of-reading.input'
import { command } from '../command'
import { Refusal } from '../refusal'
import { refusalOfUnread } from '../refusal-of-unread'
import { lockBatch } from '../batches/lock-batch'
import { keepOneReading } from './keep-one-reading'
import type { ReadingEntry } from './reading-content.input'
import { settleEntryInput } from './settle-entry.input'

/**
 * Settles an entry that is kept aside, for a reason: takes it into the book, as a correction of what holds in its place or
 * as itself where nothing does, or leaves it. The entry stays, with how it was settled, and is answered as before.
 * What is taken was looked at, so it counts as confirmed. For whoever may correct any reading.
 * Refuses: not-allowed, not-found, stale-moved-on, damaged-text, unknown-format, settle-reading-first, and of what is
 * taken all that `keepOneReading` refuses.
 */
export const settleEntry = command({
  name: 'readings.settle-entry',
  input: settleEntryInput,
  right: 'correct-reading',
  async run({ tx, actor, now, input: { entryId, hash, take, reason } }) {
    const { bakeryId } = actor
    if (levelOf(actor, 'correct-reading') !== 'yes') throw new Refusal('not-allowed')
    const key = { bakeryId, entryId, hash }
    const entry = await tx.entryToSettle.findUnique({
      where: { bakeryId_entryId_hash: key },
      select: { text: true, why: true, batchId: true, trialId: true, sentBy: { select: { name: true } } },
    })
    if (!entry) throw new Refusal('not-found')
    await lockBatch(tx, bakeryId, entry.batchId)
    if (await tx.settledEntry.findUnique({ where: { bakeryId_entryId_hash: key }, select: { at: true } }))
      throw new Refusal('stale-moved-on')
    const read = readReading(entry.text, hash)
    if (read.outcome !== 'read') throw refusalOfUnread(read)

    const taken = take ? await takeIn(tx, bakeryId, read.reading, reason) : null
    const kept = taken && (await keepOneReading(tx, actor, now, taken))
    await tx.settledEntry.create({
      data: { ...key, readingId: taken?.id ?? null, reason, settledById: actor.personId, at: now },
    })
    return {
      value: { readingId: taken?.id ?? null },
      audit: {
        target: entryId,
        before: { hash, sentBy: entry.sentBy.name, why: entry.why, value: read.reading.value, unit: read.reading.unit },
        after: kept?.note ? { reading: kept.value.readingId, ...kept.note.after } : 'left aside',
        reason,
      },
    }
  },
})

/** What is to be put into the book for an entry, under an id of its own: that of the entry may be another's. */
async function takeIn(tx: Tx, bakeryId: string, content: ReadingContent, reason: string): Promise<ReadingEntry> {
  const { batch, measure, takenAt, piece, repeat, factorLevel, value, unit, supersedes } = content
  const entered = { id: uuid(), piece, repeat, value, unit, confirmed: true }
  if (supersedes !== null) return { ...entered, supersedesId: await holderOf(tx, bakeryId, supersedes), reason }
  if (batch === null || measure === null || takenAt === null) throw new Refusal('damaged-text')
  const there = await tx.readingPlace.findFirst({
    where: { bakeryId, batchId: batch, measureId: measure, piece, factorLevel, repeat },
    select: { readingId: true },
  })
  return there
    ? { ...entered, supersedesId: there.readingId, reason }
    : { ...entered, batchId: batch, measureId: measure, factorLevel, takenAt }
}

/** The reading that now holds for one that an entry corrects, however often it was corrected since; an entry that was aside itself stands for what it was taken as. */
async function holderOf(tx: Tx, bakeryId: string, correctedId: string): Promise<string> {
  const own = await tx.reading.findUnique({
    where: { bakeryId_id: { bakeryId, id: correctedId } },
    select: { id: true },
  })
  const taken = own
    ? null
    : await tx.settledEntry.findFirst({
        where: { bakeryId, entryId: correctedId, readingId: { not: null } },
        orderBy: { at: 'asc' },
        select: { readingId: true },
      })
  const [holder] = await tx.$queryRaw<{ id: string }[]>`
    WITH RECURSIVE chain AS (
      SELECT ${own?.id ?? taken?.readingId ?? null}::uuid AS id
      UNION
      SELECT later.id FROM reading later JOIN chain ON later.supersedes_id = chain.id WHERE later.bakery_id = ${bakeryId}::uuid
    )
    SELECT chain.id FROM chain JOIN reading_place place ON place.bakery_id = ${bakeryId}::uuid AND place.reading_id = chain.id`
  // Nobody has taken the reading that it corrects.
  if (!holder) throw new Refusal('settle-reading-first')
  return holder.id
}
