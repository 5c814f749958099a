import type { SentReading } from '@/app/api/v1/readings/sent-reading'
import { readingContentText, type ReadingEntry } from '@/lib/kitchen/readings/reading-content.input'

export type Sending =
  | { outcome: 'kept'; outOfRange: boolean; needs: 'repeat' | 'third' | null }
  /** Outside what is usual: the book asks before it keeps it, and kept nothing yet. */
  | { outcome: 'odd' }
  /** The book said no and kept nothing. */
  | { outcome: 'refused'; words: string; problems: Record<string, string> }
  /** No answer, or none that can be trusted: it may be in the book or not. The same entry is to be sent again. */
  | { outcome: 'not-answered' | 'wrong-echo' }

/**
 * Sends one entry to the book. It counts as kept only when the book's answer names its id and the hash of exactly what
 * was sent.
 */
export async function sendReading(entry: ReadingEntry): Promise<Sending> {
  try {
    const response = await fetch('/api/v1/readings', {
      method: 'POST',
      headers: { 'Content-Type': 'application/json' },
      body: JSON.stringify({ readings: [entry] }),
    })
    if (response.status >= 500) return { outcome: 'not-answered' }
    const body = (await response.json()) as { readings?: SentReading[] }
    const sent = body.readings?.[0]
    if (sent?.id !== entry.id) return { outcome: 'wrong-echo' }
    if (!sent.ok && sent.refusal === 'odd-reading') return { outcome: 'odd' }
    if (!sent.ok) return { outcome: 'refused', words: sent.words, problems: sent.problems }
    if (sent.hash !== (await hashOf(readingContentText(entry)))) return { outcome: 'wrong-echo' }
    return { outcome: 'kept', outOfRange: sent.outOfRange, needs: sent.needs }
  } catch {
    // The network is away, or what came back is not the book's.
    return { outcome: 'not-answered' }
  }
}

async function hashOf(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text))
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('')
}
