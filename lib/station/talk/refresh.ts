import type { Floor, StationFacts } from '../keep/facts'
import { recall, remember, tablet } from '../keep/tablet'
import { askBook, refusalIn } from './ask-book'
import { fetchWeights } from './fetch-weights'
import { tellOnline } from './online'
import { goOnAs } from './people'

/** Lists of doughs that are being mixed are fetched anew for who opened them; others are let go of. */
async function refreshWeights(
  doughs: Floor['doughs'],
  askedAt: number,
  personId: string,
  token: string,
): Promise<void> {
  const mixed = new Set(doughs.filter(({ state }) => state !== 'baked').map(({ id }) => id))
  // One that was opened meanwhile is of a dough that this answer may not know.
  for (const { batchId, openedBy, at } of await tablet.lists.toArray())
    if (!mixed.has(batchId) && at < askedAt) await tablet.lists.delete(batchId)
    else if (openedBy.includes(personId)) await fetchWeights(batchId, personId, token)
}

/** Asks the book which tablet this is, who is on it and what is to be read, and keeps what it says. */
export async function refresh(): Promise<void> {
  const on = await recall('on')
  const token = on ? ((await tablet.holders.get(on.personId))?.token ?? null) : null
  const answer = await askBook('/api/v1/station', { token })
  if (answer?.status === 401 && refusalIn(answer)?.code === 'not-signed-in') {
    tellOnline(true)
    if (await recall('station')) await remember('withdrawn', true)
    // Nobody can weigh here any more, and the weights tell which dough is which.
    await tablet.lists.clear()
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
    bakery: {
      name: bakery.name,
      timeZone: bakery.timeZone,
      locale: bakery.locale,
      stationIdleMin: bakery.stationIdleMin,
    },
    people: people.map(({ id, name, correctsAny }) => ({ id, name, correctsAny })),
  })
  await remember('withdrawn', false)
  if (!on || !token) return
  // The book lets go of whoever was not heard of for that long; who is on the tablet touched it.
  if (facts.onShift?.id !== on.personId && !(await goOnAs(on.personId))) return
  const askedAt = Date.now()
  const floor = await askBook('/api/v1/station/floor', { token })
  const value = floor?.status === 200 ? (floor.body as Partial<Floor>) : null
  if (!value?.doughs || !value.next) return
  await remember('floor', { value: value as Floor, at: Date.now() })
  await refreshWeights(value.doughs, askedAt, on.personId, token)
}
