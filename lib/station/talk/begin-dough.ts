import type { NextDough } from '../keep/facts'
import { remember } from '../keep/tablet'
import { askOnce, type Came } from './ask-once'
import { refresh } from './refresh'

/** Begins the next dough of a trial, which only the book can: it says which one that is. */
export async function beginDough(dough: NextDough, personId: string, cleanDownDone: boolean): Promise<Came> {
  const { id: batchId, revision } = dough
  const came = await askOnce({
    personId,
    address: '/api/v1/station/begin',
    about: `${batchId} ${revision} ${cleanDownDone}`,
    body: { batchId, seenRevision: revision, cleanDownDone },
  })
  if (came.outcome === 'done') await remember('begun', { batchId, personId, revision: revision + 1, at: Date.now() })
  if (came.outcome !== 'unknown') await refresh()
  return came
}
