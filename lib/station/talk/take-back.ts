import { forget, type Kept } from '../keep/tablet'
import { askAs } from './ask-as'
import { refusalIn } from './ask-book'
import { refresh } from './refresh'

/**
 * Takes back that a dough was begun; the book judges the time and who.
 * @returns null when it waits again, otherwise why not: words, or nothing without an answer
 */
export async function takeBack(begun: Kept['begun']): Promise<{ words: string | null } | null> {
  const body = { batchId: begun.batchId, seenRevision: begun.revision }
  const answer = await askAs(begun.personId, '/api/v1/station/take-back', { body })
  if (answer?.status !== 200) return { words: refusalIn(answer)?.words ?? null }
  await forget('begun')
  await refresh()
  return null
}
