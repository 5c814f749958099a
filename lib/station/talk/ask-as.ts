import { recall, tablet } from '../keep/tablet'
import type { Answer } from '../outbox/judge-answer'
import { askBook } from './ask-book'
import { refresh } from './refresh'

/**
 * Asks the book something as whoever is on the tablet. It lets go of people whom it has not heard of for a while: then
 * they go on first, or their PIN is asked, and the question goes once more.
 */
export async function askAs(
  personId: string,
  address: string,
  asked: { body: object; once?: string },
): Promise<Answer> {
  const ask = async () => askBook(address, { ...asked, token: (await tablet.holders.get(personId))?.token ?? null })
  const answer = await ask()
  if (answer?.status !== 401 && answer?.status !== 403) return answer
  await refresh()
  return (await recall('on'))?.personId === personId ? ask() : answer
}
