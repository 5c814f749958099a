import 'server-only'
import type { Tx } from '../../db/client'
import type { NoteEntry } from './log-note.input'

/** A note as it stands in the book. */
export type NoteRow = {
  bakeryId: string
  id: string
  trialId: string | null
  batchId: string | null
  text: string
  forNext: boolean
  personId: string
  takenAt: Date
  receivedAt: Date
  contentHash: string
}

/** What notes are judged by. Ids are keys in lower case, as the database writes them. */
export type NoteFacts = {
  batches: Map<string, { trialId: string; code: string }>
  /** By id, with the number. */
  trials: Map<string, number>
  /** The hash of what is in the book under an entry's own id. */
  hashes: Map<string, string>
}

/**
 * Loads what notes are judged by. There is no dough to lock where a note is of none, so the ids themselves are: of two
 * that are sent at one moment the second finds the first. What is not of this bakery is not there.
 */
export async function loadNoteFacts(tx: Tx, bakeryId: string, entries: readonly NoteEntry[]): Promise<NoteFacts> {
  const ids = lowerOf(entries.map(({ id }) => id))
  await tx.$executeRaw`
    SELECT pg_advisory_xact_lock(hashtextextended('note ' || id, 0)) FROM (SELECT unnest(${ids}::text[]) AS id ORDER BY 1) AS in_order`
  const [batches, trials, known] = await Promise.all([
    tx.batch.findMany({
      where: { bakeryId, id: { in: lowerOf(entries.map(({ batchId }) => batchId)) } },
      select: { id: true, trialId: true, code: true },
    }),
    tx.trial.findMany({
      where: { bakeryId, id: { in: lowerOf(entries.map(({ trialId }) => trialId)) } },
      select: { id: true, number: true },
    }),
    tx.note.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, contentHash: true } }),
  ])
  return {
    batches: new Map(batches.map(({ id, ...batch }) => [id, batch])),
    trials: new Map(trials.map(({ id, number }) => [id, number])),
    hashes: new Map(known.map(({ id, contentHash }) => [id, contentHash])),
  }
}

function lowerOf(ids: readonly (string | null | undefined)[]): string[] {
  return [...new Set(ids.flatMap((id) => (id ? [id.toLowerCase()] : [])))]
}
