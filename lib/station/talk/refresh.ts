import type { Floor, StationFacts } from '../keep/facts'
import { recall, remember, tablet } from '../keep/tablet'
import { askBook, refusalIn } from './ask-book'
import { tellOnline } from './online'
import { goOnAs } from './people'

/** Asks the book which tablet this is, who is on it and what is to be read, and keeps what it says. */
export async function refresh(): Promise<void> {
  const on = await recall('on')
  const token = on ? ((await tablet.holders.get(on.personId))?.token ?? null) : null
  const answer = await askBook('/api/v1/station', { token })
  if (answer?.status === 401 && refusalIn(answer)?.code === 'not-signed-in') {
    tellOnline(true)
    if (await recall('station')) await remember('withdrawn', true)
    return
  }
  const facts =
    answer?.status === 200 ? (answer.body as Partial<StationFacts & { onShift: { id: string } | null }>) : null
  if (!facts?.station || !facts.bakery || !facts.people || !facts.book) {
    tellOnline(false)
    return
  }
  tellOnline(true)
  const { book, station, bakery, people } = facts
  await remember('station', {
    book,
    station,
    bakery: { name: bakery.name, timeZone: bakery.timeZone, locale: bakery.locale },
    people: people.map(({ id, name, correctsAny }) => ({ id, name, correctsAny })),
  })
  await remember('withdrawn', false)
  if (!on || !token) return
  // The book lets go of whoever was not heard of for ten minutes; who is on the tablet touched it.
  if (facts.onShift?.id !== on.personId && !(await goOnAs(on.personId))) return
  const floor = await askBook('/api/v1/station/floor', { token })
  if (floor?.status === 200 && Array.isArray((floor.body as Floor).doughs))
    await remember('floor', { value: floor.body as Floor, at: Date.now() })
}
