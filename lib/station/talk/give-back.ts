import { inOne, recall, remember, tablet } from '../keep/tablet'
import { askBook } from './ask-book'

/** Most entries that the book is asked for at once. */
const mostAsked = 500

/**
 * Asks a book that was started since whether it still has all that it took from here, and lets wait again what it lacks:
 * it was put back from a copy. Only the one page that sends may ask, so that no answer comes in between.
 * @returns false where it did not answer, and is to be asked again
 */
export async function giveBack(): Promise<boolean> {
  const book = (await recall('station'))?.book
  if (book === undefined || book === (await recall('compared')) || (await recall('withdrawn'))) return true
  const told = await tablet.outbox.where('state').anyOf('book', 'aside').sortBy('counter')
  for (let at = 0; at < told.length; at += mostAsked) {
    const entries = told.slice(at, at + mostAsked).map(({ id, hash, state }) => ({
      id,
      hash,
      outcome: state === 'book' ? 'kept' : 'aside',
    }))
    const answer = await askBook('/api/v1/station/lacking', { body: { entries } })
    const lacking = answer?.status === 200 ? (answer.body as { lacking?: unknown } | null)?.lacking : undefined
    if (!Array.isArray(lacking)) return false
    await inOne(async () => {
      for (const { id } of entries)
        if (lacking.includes(id)) await tablet.outbox.update(id, { state: 'waiting', words: null, settledAt: null })
    })
  }
  await remember('compared', book)
  return true
}
