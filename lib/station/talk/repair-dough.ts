import type { Floor } from '../keep/facts'
import { recall, remember, tablet } from '../keep/tablet'
import { askOnce, type Came } from './ask-once'
import { refresh } from './refresh'
import { sendOutbox } from './send-outbox'

type ToTakeOut = { batchId: string; to: 'lost' | 'set_aside'; why: string; personId: string }

/**
 * Takes a dough out, for what was noted of it. What somebody noted or read of it here goes before: the book takes a dough
 * out for what it knows, and nothing more of one that is out. One that is out by then stays as it is.
 */
export async function takeOut({ batchId, to, why, personId }: ToTakeOut): Promise<Came | { outcome: 'unsent' }> {
  await sendOutbox()
  const unsent = await tablet.outbox
    .where('state')
    .equals('waiting')
    .filter((entry) => entry.personId === personId && 'batchId' in entry.payload && entry.payload.batchId === batchId)
    .toArray()
  if (unsent.length > 0) return { outcome: 'unsent' }
  await refresh()
  const revision = (await recall('floor'))?.value.doughs.find(({ id }) => id === batchId)?.revision
  if (revision === undefined) return { outcome: 'done' }
  const came = await askOnce({
    personId,
    address: '/api/v1/station/move',
    about: `${batchId} ${revision} ${to}`,
    body: { batchId, seenRevision: revision, to, why },
  })
  if (came.outcome === 'done') await remember('out', { batchId, personId, revision: revision + 1, at: Date.now() })
  if (came.outcome !== 'unknown') await refresh()
  return came
}

/** Has a dough that is out baked again: only the book can give out a code, and a place in the order. */
export async function bakeAgain(batchId: string, personId: string): Promise<Came> {
  const came = await askOnce({
    personId,
    address: '/api/v1/station/bake-again',
    about: batchId,
    body: { batchId },
  })
  if (came.outcome !== 'unknown') await refresh()
  return came
}

type Waiting = Pick<Floor['next'][number], 'id' | 'turn'>

/** Has two doughs that wait exchange their places. The same two for the same reason, asked again, change once. */
export async function exchange(one: Waiting, other: Waiting, why: string, personId: string): Promise<Came> {
  const came = await askOnce({
    personId,
    address: '/api/v1/station/exchange',
    about: [...[one.id, other.id].sort(), why].join(' '),
    body: { batchId: one.id, seenTurn: one.turn, otherId: other.id, why },
  })
  if (came.outcome !== 'unknown') await refresh()
  return came
}
