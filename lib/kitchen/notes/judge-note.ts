import 'server-only'
import type { ActorOf } from '../../auth/rights'
import type { Json } from '../../documents/canonical-text'
import { hashOfText } from '../../documents/hash-of-text'
import { Refusal } from '../refusal'
import type { NoteEntry } from './log-note.input'
import { noteContentText } from './note-content.input'
import type { NoteFacts, NoteRow } from './note-facts'

export type NoteVerdict = { outcome: 'ready'; row: NoteRow; note: { [name: string]: Json } } | { outcome: 'again' }

/**
 * Judges one note. It is kept at any point, also of a dough that is out and of a trial that has ended, because it moves
 * nothing. The record names it without its words: who reads the record need not know the dough.
 * @throws Refusal not-found, note-clash, invalid where dough and trial are both named
 */
export function judgeNote(
  entry: NoteEntry,
  facts: NoteFacts,
  { actor, now }: { actor: ActorOf<'log-reading'>; now: Date },
): NoteVerdict {
  const id = entry.id.toLowerCase()
  const contentHash = hashOfText(noteContentText(entry))
  const known = facts.hashes.get(id)
  if (known === contentHash) return { outcome: 'again' }
  if (known !== undefined) throw new Refusal('note-clash')
  const { batchId, trialId } = entry
  if (batchId && trialId) throw Refusal.at('trialId', 'dough-or-trial')
  const batch = batchId ? facts.batches.get(batchId.toLowerCase()) : null
  const trial = trialId ? facts.trials.get(trialId.toLowerCase()) : null
  if (batch === undefined || trial === undefined) throw new Refusal('not-found')
  return {
    outcome: 'ready',
    row: {
      bakeryId: actor.bakeryId,
      id,
      trialId: batch?.trialId ?? trialId?.toLowerCase() ?? null,
      batchId: batchId?.toLowerCase() ?? null,
      text: entry.text,
      forNext: entry.forNext,
      personId: actor.personId,
      takenAt: new Date(entry.takenAt),
      receivedAt: now,
      contentHash,
    },
    note: {
      note: id,
      ...(batch ? { batch: batch.code } : {}),
      ...(trial ? { trial } : {}),
      forNext: entry.forNext,
      hash: contentHash,
    },
  }
}
