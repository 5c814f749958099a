import 'server-only'
import { z } from 'zod'
import type { Tx } from '../../db/client'
import { hashOfText } from '../../documents/hash-of-text'
import { entryHandler, type EntryVerdict, type Sender } from '../intake/entry-handler'
import { lockBatches } from '../readings/lock-batches'
import type { BatchFacts } from '../readings/reading-facts'
import { Refusal } from '../refusal'
import { mustBeOpen } from '../trials/must-be-open'
import { causeContentText } from './cause-content.input'
import { logCauseInput, type CauseEntry } from './log-cause.input'

type CauseRow = {
  bakeryId: string
  id: string
  trialId: string
  batchId: string
  what: string
  noticedAt: Date
  personId: string
  at: Date
  contentHash: string
}

/** What causes are judged by. Ids are keys in lower case, as the database writes them. */
type CauseFacts = {
  batches: Map<string, BatchFacts>
  /** The hash of what is in the book under an entry's own id; null for one from the desk. */
  hashes: Map<string, string | null>
}

/**
 * What happened to doughs, from outside, as `noteCause` has it from the desk. It takes nothing out, and counts from when it
 * came in: a device's clock can be set. None is kept aside, because nobody else can have been faster.
 */
export const causesHandler = entryHandler<CauseEntry, CauseFacts, CauseRow>({
  kinds: { cause: { input: logCauseInput, right: 'log-reading', answer: z.strictObject({}) } },
  textOf: causeContentText,
  load,
  judge,
  note(facts, { id, contentHash }) {
    facts.hashes.set(id, contentHash)
  },
  noteAside() {
    throw new Error('no cause is kept aside')
  },
  async keep(tx, rows) {
    await tx.batchCause.createMany({ data: [...rows] })
  },
  held: async (from, bakeryId, ids) =>
    (
      await from.batchCause.findMany({
        where: { bakeryId, id: { in: ids } },
        select: { id: true, contentHash: true },
      })
    ).flatMap(({ id, contentHash }) => (contentHash === null ? [] : [{ id, contentHash }])),
  whyAside: {},
})

async function load(tx: Tx, bakeryId: string, entries: readonly CauseEntry[]): Promise<CauseFacts> {
  const batches = await lockBatches(tx, bakeryId, [...new Set(entries.map(({ batchId }) => batchId.toLowerCase()))], [])
  const known = await tx.batchCause.findMany({
    where: { bakeryId, id: { in: entries.map(({ id }) => id.toLowerCase()) } },
    select: { id: true, contentHash: true },
  })
  return {
    batches: new Map(batches.map((batch) => [batch.id, batch])),
    hashes: new Map(known.map(({ id, contentHash }) => [id, contentHash])),
  }
}

function judge(
  entry: CauseEntry,
  { batches, hashes }: CauseFacts,
  { actor, now }: { actor: Sender; now: Date },
): EntryVerdict<CauseRow> {
  const id = entry.id.toLowerCase()
  const contentHash = hashOfText(causeContentText(entry))
  const known = hashes.get(id)
  if (known === contentHash) return { outcome: 'again', about: {} }
  if (known !== undefined) throw new Refusal('cause-clash')
  const batch = batches.get(entry.batchId.toLowerCase())
  if (!batch) throw new Refusal('not-found')
  mustBeOpen(batch.trial.state)
  // Nobody notices what is still to come: the clock of that device is ahead.
  const noticedAt = new Date(Math.min(Date.parse(entry.takenAt), now.getTime()))
  const { bakeryId, personId } = actor
  const { what } = entry
  const at = { trialId: batch.trialId, batchId: batch.id }
  return {
    outcome: 'ready',
    row: { bakeryId, id, ...at, what, noticedAt, personId, at: now, contentHash },
    at,
    about: {},
    note: { batch: batch.code, cause: id, what, noticedAt: noticedAt.toISOString(), hash: contentHash },
  }
}
