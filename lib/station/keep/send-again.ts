import type { OutboxEntry } from '../outbox/entry'
import { isOdd } from '../outbox/is-odd'
import { tablet } from './tablet'

/** Lets an entry that the book refused wait to be sent once more; an odd value goes confirmed, since somebody looked. */
export async function sendAgain({ id, payload, refusal }: OutboxEntry): Promise<void> {
  await tablet.outbox.update(id, {
    state: 'waiting',
    refusal: null,
    words: null,
    faults: [],
    payload: isOdd(refusal) ? { ...payload, confirmed: true } : payload,
  })
}
