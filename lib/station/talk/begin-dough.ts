import { v7 as uuid } from 'uuid'
import type { NextDough } from '../keep/facts'
import { forget, inOne, recall, remember } from '../keep/tablet'
import { askAs } from './ask-as'
import { refusalIn } from './ask-book'
import { tellOnline } from './online'
import { refresh } from './refresh'

/** What came of a tap: nobody knows, where the book did not answer, and tapping again is safe. */
export type Begun =
  | { outcome: 'begun' }
  | { outcome: 'unknown' }
  | { outcome: 'refused'; code: string; words: string | null }

/**
 * Begins the next dough of a trial, which only the book can: it says which one that is. The tap has a name, kept on the
 * tablet until the book has answered it, so that a second tap or a lost answer begins one dough.
 */
export async function beginDough(dough: NextDough, personId: string, cleanDownDone: boolean): Promise<Begun> {
  const once = await nameOfTap(dough.id, personId)
  const body = { batchId: dough.id, seenRevision: dough.revision, cleanDownDone }
  const answer = await askAs(personId, '/api/v1/station/begin', { once, body })
  const refused = refusalIn(answer)
  if (!answer || answer.status >= 500 || (answer.status !== 200 && !refused)) {
    tellOnline(false)
    return { outcome: 'unknown' }
  }
  await forget('beginning')
  if (!refused) await remember('begun', { batchId: dough.id, personId, revision: dough.revision + 1, at: Date.now() })
  await refresh()
  return refused ? { outcome: 'refused', ...refused } : { outcome: 'begun' }
}

/** The name of a tap that the book has not answered yet, or a new one. */
function nameOfTap(batchId: string, personId: string): Promise<string> {
  return inOne(async () => {
    const before = await recall('beginning')
    if (before?.batchId === batchId && before.personId === personId) return before.id
    const id = uuid()
    await remember('beginning', { id, batchId, personId })
    return id
  })
}
