import { tablet } from '../keep/tablet'
import { askAs } from './ask-as'
import { refusalIn } from './ask-book'
import { fetchWeights } from './fetch-weights'

/**
 * Opens what a dough weighs to whoever is on the tablet: the book notes that they know it, and gives them the list.
 * @returns null when it lies on the tablet, otherwise why not: words, or nothing without an answer
 */
export async function openWeights(batchId: string, personId: string): Promise<{ words: string | null } | null> {
  const opened = await askAs(personId, '/api/v1/station/open-weights', { body: { batchId } })
  if (opened?.status !== 200) return { words: refusalIn(opened)?.words ?? null }
  return fetchWeights(batchId, personId, (await tablet.holders.get(personId))?.token ?? null)
}
