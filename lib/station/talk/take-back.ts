import { forget, type Kept } from '../keep/tablet'
import { askAs } from './ask-as'
import { refusalIn } from './ask-book'
import { refresh } from './refresh'

/**
 * Takes back that a dough was begun, or taken out; the book judges the time and who.
 * @returns null when it is as before, otherwise why not: words, or nothing without an answer
 */
export async function takeBack(
  name: 'begun' | 'out',
  { batchId, revision, personId }: Kept['begun'],
): Promise<{ words: string | null } | null> {
  const answer = await askAs(personId, '/api/v1/station/take-back', { body: { batchId, seenRevision: revision } })
  if (answer?.status !== 200) return { words: refusalIn(answer)?.words ?? null }
  await forget(name)
  await refresh()
  return null
}
