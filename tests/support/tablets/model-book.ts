import { createHash } from 'node:crypto'
import type { KindFacts } from '../../../lib/station/kinds/kind-facts'
import { textOfEntry } from '../../../lib/station/kinds/kinds'
import type { Book } from './load-tablet'

type Told = { entries: { id: string; hash: string; outcome: 'kept' | 'aside' }[] }
type Sent = { kind: 'note' | 'cause' | 'reading'; id: string; batchId?: string; piece?: number }

/** What the book promises a tablet and no more: each entry once, the first of a place, the rest of it aside, none of a dough that is not there. */
export function modelBook(goneId: string): {
  book: Book
  held(): Promise<{ book: string[]; aside: string[] }>
  putBack(to: number): Promise<void>
} {
  const took: { key: string; piece: number | undefined; isAside: boolean }[] = []
  const has = (wanted: Partial<(typeof took)[number]>) =>
    took.some(({ key, piece, isAside }) => {
      const { key: ofKey = key, piece: ofPiece = piece, isAside: ofAside = isAside } = wanted
      return key === ofKey && piece === ofPiece && isAside === ofAside
    })
  const answerTo = ({ kind, ...payload }: Sent) => {
    const { id, batchId, piece } = payload
    const text = textOfEntry(kind, payload as KindFacts[typeof kind]['payload'] & { id: string })
    const hash = createHash('sha256').update(text).digest('hex')
    const key = `${id} ${hash}`
    if (batchId === goneId) return { outcome: 'refused', id, refusal: 'not-found', words: 'There is no such dough.' }
    if (!has({ key })) took.push({ key, piece, isAside: piece !== undefined && has({ piece, isAside: false }) })
    return has({ key, isAside: true })
      ? { outcome: 'aside', id, hash, words: 'A reading is there.' }
      : { outcome: 'kept', id, hash }
  }
  const isAsTold = ({ id, hash, outcome }: Told['entries'][number]) =>
    has({ key: `${id} ${hash}`, isAside: outcome === 'aside' })
  const keysOf = (isIt: boolean) => took.filter(({ isAside }) => isAside === isIt).map(({ key }) => key)
  return {
    book: async (address, body) => ({
      status: 200,
      body: address.endsWith('/lacking')
        ? { lacking: (body as Told).entries.flatMap((entry) => (isAsTold(entry) ? [] : [entry.id])) }
        : { entries: (body as { entries: Sent[] }).entries.map(answerTo) },
    }),
    held: async () => ({ book: keysOf(false), aside: keysOf(true) }),
    putBack: async (to) => void took.splice(to % (took.length + 1)),
  }
}
