import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import type { Json } from '../../documents/canonical-text'
import { readReading } from '../../documents/reading/read-reading'
import type { ReadingContent } from '../../documents/reading/text-of-reading.input'
import { formatDateTime } from '../../words/format/date'
import { command } from '../command'
import { Refusal } from '../refusal'
import { refusalOfUnread } from '../refusal-of-unread'
import { lockBatch } from '../batches/lock-batch'
import { keepOneReading } from './keep-one-reading'
import type { ReadingEntry } from './reading-content.input'
import { settleEntryInput } from './settle-entry.input'
import { standingFor } from './standing-for'

/**
 * Settles an entry that is kept aside, for a reason: takes it into the book, as a correction of what holds in its place or
 * as itself where nothing does, or leaves it. The entry stays, with how it was settled, and is answered as before.
 * What is taken was looked at, beside what it takes the place of, so it counts as confirmed. One whose text cannot be
 * read can be left, and so can a weighing, which whoever weighed corrects at the dough.
 * Refuses: not-found, entry-taken-meanwhile, entry-left-meanwhile, weighing-only-left, and of what is taken: damaged-text, unknown-format,
 * settle-reading-first, stale, stale-moved-on, entry-not-possible and what `keepOneReading` refuses beside faults at fields.
 */
export const settleEntry = command({
  name: 'readings.settle-entry',
  input: settleEntryInput,
  right: 'settle-entries',
  async run({ tx, actor, now, input: { entryId, hash, take, seenReadingId, reason } }) {
    const { bakeryId } = actor
    const key = { bakeryId, entryId, hash }
    const entry = await tx.entryToSettle.findUnique({
      where: { bakeryId_entryId_hash: key },
      select: { kind: true, text: true, why: true, batchId: true, sentBy: { select: { name: true } } },
    })
    // What came after a closing is no entry to settle but a proposed amendment.
    if (!entry || entry.why === 'trial_closed') throw new Refusal('not-found')
    await lockBatch(tx, bakeryId, entry.batchId)
    await mustBeUnsettled(tx, key)
    const isWeighing = entry.kind === 'weighing'
    if (take && isWeighing) throw new Refusal('weighing-only-left')
    const read = readReading(entry.text, hash)
    if (take && read.outcome !== 'read') throw refusalOfUnread(read)

    const taken =
      take && read.outcome === 'read' ? await takeIn(tx, bakeryId, read.reading, seenReadingId, reason) : null
    const kept = taken && (await keepOneReading(tx, actor, now, taken).catch(refuseAsSent))
    await tx.settledEntry.create({
      data: { ...key, readingId: taken?.id ?? null, reason, settledById: actor.personId, at: now },
    })
    const said: { [name: string]: Json } =
      read.outcome === 'read'
        ? { value: read.reading.value, unit: read.reading.unit }
        : { unread: isWeighing ? entry.kind : read.outcome }
    return {
      value: { readingId: taken?.id ?? null },
      audit: {
        target: entryId,
        before: { hash, sentBy: entry.sentBy.name, why: entry.why, ...said },
        after: kept?.note ? { reading: kept.value.readingId, ...kept.note.after } : 'left aside',
        reason,
      },
    }
  },
})

/** Says who was faster, and what they did. */
async function mustBeUnsettled(tx: Tx, key: { bakeryId: string; entryId: string; hash: string }): Promise<void> {
  const settled = await tx.settledEntry.findUnique({
    where: { bakeryId_entryId_hash: key },
    select: { readingId: true, reason: true, at: true, settledBy: { select: { name: true } } },
  })
  if (!settled) return
  throw new Refusal(settled.readingId === null ? 'entry-left-meanwhile' : 'entry-taken-meanwhile', {
    who: settled.settledBy.name,
    at: await momentInBakery(tx, key.bakeryId, settled.at),
    reason: settled.reason,
  })
}

/** What is to be put into the book for an entry, under an id of its own: that of the entry may be another's. */
async function takeIn(
  tx: Tx,
  bakeryId: string,
  content: ReadingContent,
  seenReadingId: string | null,
  reason: string,
): Promise<ReadingEntry> {
  const { batch, measure, takenAt, piece, repeat, factorLevel, value, unit, supersedes } = content
  const [supersedesId = null] = await standingFor(tx, bakeryId, [content])
  // Nobody has taken the reading that it corrects.
  if (supersedes !== null && supersedesId === null) throw new Refusal('settle-reading-first')
  if (supersedesId !== seenReadingId) throw await movedOn(tx, bakeryId, supersedesId)
  const entered = { id: uuid(), piece, repeat, value, unit, confirmed: true }
  if (supersedesId !== null) return { ...entered, supersedesId, reason }
  if (batch === null || measure === null || takenAt === null) throw new Refusal('damaged-text')
  return { ...entered, batchId: batch, measureId: measure, factorLevel, takenAt }
}

/** What is wrong with an entry cannot be put right at a field: it was sent, and is taken as it is or not at all. */
function refuseAsSent(error: unknown): never {
  throw error instanceof Refusal && error.code === 'invalid' ? new Refusal('entry-not-possible') : error
}

/** Says who put what is there into the book since somebody looked. */
async function movedOn(tx: Tx, bakeryId: string, readingId: string | null): Promise<Refusal> {
  if (readingId === null) return new Refusal('stale-moved-on')
  const there = await tx.reading.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: readingId } },
    select: { receivedAt: true, person: { select: { name: true } } },
  })
  return new Refusal('stale', { who: there.person.name, at: await momentInBakery(tx, bakeryId, there.receivedAt) })
}

async function momentInBakery(tx: Tx, bakeryId: string, at: Date): Promise<string> {
  const bakery = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { locale: true, timeZone: true } })
  return formatDateTime(at, bakery)
}
