import type { SentAnswers } from '@/app/api/v1/entries/sent-answer'
import { readingContentText, type ReadingEntry } from '@/lib/kitchen/readings/reading-content.input'

export type Sending =
  | { outcome: 'kept'; outOfRange: boolean; needs: 'repeat' | 'third' | null }
  /** Outside what is usual: the book asks before it keeps it, and kept nothing yet. */
  | { outcome: 'odd' }
  /** Somebody was faster: it is kept, though not in its place, until it is settled. */
  | { outcome: 'aside'; words: string }
  /** The book said no and kept nothing. */
  | { outcome: 'refused'; words: string; problems: Record<string, string> }
  /** No answer, or none that can be trusted: it may be in the book or not. The same entry is to be sent again. */
  | { outcome: 'not-answered' | 'wrong-echo' }

/**
 * Sends one entry to the book. It counts as kept, or kept aside, only when the book's answer names its id and the hash of
 * exactly what was sent.
 */
export async function sendReading(entry: ReadingEntry): Promise<Sending> {
  try {
    const response = await fetch('/api/v1/entries', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ entries: [{ kind: 'supersedesId' in entry ? 'correction' : 'reading', ...entry }] }),
    })
    if (response.status >= 500) return { outcome: 'not-answered' }
    const body = (await response.json()) as SentAnswers
    if ('refusal' in body)
      return body.words === undefined
        ? { outcome: 'wrong-echo' }
        : { outcome: 'refused', words: body.words, problems: {} }
    const [sent] = body.entries
    if (sent?.id !== entry.id) return { outcome: 'wrong-echo' }
    if (sent.outcome === 'refused')
      return sent.refusal === 'odd-reading'
        ? { outcome: 'odd' }
        : { outcome: 'refused', words: sent.words, problems: sent.problems }
    if (sent.hash !== (await hashOf(readingContentText(entry)))) return { outcome: 'wrong-echo' }
    return sent.outcome === 'aside'
      ? { outcome: 'aside', words: sent.words }
      : { outcome: 'kept', outOfRange: sent.outOfRange, needs: sent.needs }
  } catch {
    // The network is away, or what came back is not the book's.
    return { outcome: 'not-answered' }
  }
}

async function hashOf(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text))
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
