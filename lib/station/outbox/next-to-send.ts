import type { Holder, OutboxEntry } from './entry'

/** Most entries that one request brings; the book takes a hundred. */
const mostEntries = 50

/**
 * What goes next: the oldest entries that wait, of one person and so under one token, in the order in which they were
 * kept. Whoever has to log on first holds nobody else up but what rests on theirs.
 * @param entries of this tablet, in any order
 */
export function nextToSend(
  entries: readonly OutboxEntry[],
  holders: readonly Holder[],
): { token: string; personId: string; entries: OutboxEntry[] } | null {
  const blocked = new Set(holders.filter(({ asks }) => asks !== 'nothing').map(({ personId }) => personId))
  const waiting = inOrder(entries, blocked)
  const [first] = waiting
  if (!first) return null
  const other = waiting.findIndex(({ personId }) => personId !== first.personId)
  return {
    token: holders.find(({ personId }) => personId === first.personId)?.token ?? first.shiftToken,
    personId: first.personId,
    entries: waiting.slice(0, Math.min(other === -1 ? waiting.length : other, mostEntries)),
  }
}

/** What can go, oldest first: the correction of something that the book has not got waits for that to go before it. */
function inOrder(entries: readonly OutboxEntry[], blocked: ReadonlySet<string>): OutboxEntry[] {
  const away = new Set<string>()
  return entries
    .filter(({ state }) => state === 'waiting' || state === 'attention')
    .sort((a, b) => a.counter - b.counter)
    .filter(({ id, state, personId, payload }) => {
      const goes =
        state === 'waiting' &&
        !blocked.has(personId) &&
        !('supersedesId' in payload && payload.supersedesId && away.has(payload.supersedesId))
      if (!goes) away.add(id)
      return goes
    })
}
