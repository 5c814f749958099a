import 'server-only'
import { z } from 'zod'
import type { Tx } from '../../db/client'
import { hashOfText } from '../../documents/hash-of-text'
import { entryHandler, type EntryVerdict, type Sender } from '../intake/entry-handler'
import { lockBatches } from '../readings/lock-batches'
import type { BatchFacts } from '../readings/reading-facts'
import { Refusal } from '../refusal'
import { momentOfStep } from '../steps/moment-of-step.input'
import { mustBeOpen } from '../trials/must-be-open'
import { countContentText } from './count-content.input'
import { countFault } from './count-fault.input'
import { keepCounts, type CountRow } from './keep-counts'
import { logCountInput, type CountEntry } from './log-count.input'

/** What counts are judged by. Ids are keys in lower case, as the database writes them. */
type CountFacts = {
  batches: Map<string, BatchFacts>
  /** The hash of what is in the book under an entry's own id. */
  hashes: Map<string, string>
}

/**
 * Counts of pieces, from outside, as `countPieces` has them from the desk: a later one stands in the place of an earlier
 * one, which stays. None is kept aside, because of two the later one stands, whichever comes in first.
 */
export const countsHandler = entryHandler<CountEntry, CountFacts, CountRow>({
  kinds: { count: { input: logCountInput, right: 'log-reading', answer: z.strictObject({}) } },
  textOf: countContentText,
  load,
  judge,
  note(facts, { id, contentHash }) {
    facts.hashes.set(id, contentHash)
  },
  noteAside() {
    throw new Error('no count is kept aside')
  },
  async keep(tx, rows) {
    const [first] = rows
    if (first) await keepCounts(tx, first.bakeryId, rows)
  },
  held: (from, bakeryId, ids) =>
    from.pieceCount.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, contentHash: true } }),
  whyAside: {},
})

async function load(tx: Tx, bakeryId: string, entries: readonly CountEntry[]): Promise<CountFacts> {
  const lower = (ids: string[]) => [...new Set(ids.map((id) => id.toLowerCase()))]
  const batches = await lockBatches(tx, bakeryId, lower(entries.map(({ batchId }) => batchId)), [])
  const known = await tx.pieceCount.findMany({
    where: { bakeryId, id: { in: lower(entries.map(({ id }) => id)) } },
    select: { id: true, contentHash: true },
  })
  return {
    batches: new Map(batches.map((batch) => [batch.id, batch])),
    hashes: new Map(known.map(({ id, contentHash }) => [id, contentHash])),
  }
}

/** @throws Refusal not-found, count-clash, trial-closed, trial-stopped, batch-not-begun, batch-not-baked, invalid */
function judge(
  entry: CountEntry,
  facts: CountFacts,
  { actor, now }: { actor: Sender; now: Date },
): EntryVerdict<CountRow> {
  const id = entry.id.toLowerCase()
  const contentHash = hashOfText(countContentText(entry))
  const known = facts.hashes.get(id)
  if (known === contentHash) return { outcome: 'again', about: {} }
  if (known !== undefined) throw new Refusal('count-clash')
  const batch = facts.batches.get(entry.batchId.toLowerCase())
  if (!batch) throw new Refusal('not-found')
  mustBeOpen(batch.trial.state)
  if (batch.state === 'waiting') throw new Refusal('batch-not-begun')
  if (batch.state === 'not_baked') throw new Refusal('batch-not-baked')
  const fault = countFault(entry)
  if (fault) throw Refusal.at(fault.at, fault.code)
  const { made, good } = entry
  const takenAt = new Date(entry.takenAt)
  const clockAheadS = entry.clockAheadS ?? null
  const moment = { takenAt: takenAt.getTime(), clockAheadS, agoS: 0, receivedAt: now.getTime(), begunAt: null }
  const became = {
    sampled: entry.sampled ?? null,
    sold: entry.sold ?? null,
    given: entry.given ?? null,
    wasted: entry.wasted ?? null,
  }
  return {
    outcome: 'ready',
    at: null,
    about: {},
    row: {
      bakeryId: actor.bakeryId,
      id,
      trialId: batch.trialId,
      batchId: batch.id,
      made,
      good,
      ...became,
      at: new Date(momentOfStep(moment)),
      clockAheadS,
      personId: actor.personId,
      takenAt,
      receivedAt: now,
      contentHash,
    },
    note: { batch: batch.code, made, good, ...became, hash: contentHash },
  }
}
