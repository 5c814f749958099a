import { createHash } from 'node:crypto'
import type { KindFacts } from '../../../lib/station/kinds/kind-facts'
import { textOfEntry } from '../../../lib/station/kinds/kinds'
import type { Book } from './load-tablet'

type Sent = { kind: 'note' | 'cause' | 'reading'; id: string; batchId?: string; piece?: number }

/** What the book promises a tablet and no more: each entry once, the first of a place, the rest of it aside, none of a dough that is not there. */
export function modelBook(goneId: string): { book: Book; held(): Promise<{ book: string[]; aside: string[] }> } {
  const inBook: string[] = []
  const aside: string[] = []
  const places = new Set<number>()
  const answerTo = ({ kind, ...payload }: Sent) => {
    const { id, batchId, piece } = payload
    const text = textOfEntry(kind, payload as KindFacts[typeof kind]['payload'] & { id: string })
    const hash = createHash('sha256').update(text).digest('hex')
    const key = `${id} ${hash}`
    if (batchId === goneId) return { outcome: 'refused', id, refusal: 'not-found', words: 'There is no such dough.' }
    if (inBook.includes(key)) return { outcome: 'kept', id, hash }
    const late = { outcome: 'aside', id, hash, words: 'A reading is there.' }
    if (aside.includes(key)) return late
    if (piece !== undefined && places.has(piece)) {
      aside.push(key)
      return late
    }
    if (piece !== undefined) places.add(piece)
    inBook.push(key)
    return { outcome: 'kept', id, hash }
  }
  return {
    book: async (_address, body) => ({
      status: 200,
      body: { entries: (body as { entries: Sent[] }).entries.map(answerTo) },
    }),
    held: async () => ({ book: [...inBook], aside: [...aside] }),
  }
}
