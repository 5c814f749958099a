import { v7 as uuid } from 'uuid'
import type { KindFacts } from '../kinds/kind-facts'
import { isTimed, textOfEntry } from '../kinds/kinds'
import type { EntryKind, OutboxEntry } from '../outbox/entry'
import { hashOf } from './hash-of'
import { inOne, recall, remember, tablet } from './tablet'

/** Who keeps something: on which tablet, and under which token. */
export type KeptBy = { stationId: string; personId: string; personName: string; shiftToken: string }

export type NewEntry<Kind extends EntryKind> = {
  kind: Kind
  /** All but its id and when it was made, which it is given here. */
  content: Omit<KindFacts[Kind]['payload'], 'id' | 'takenAt'>
  shown: KindFacts[Kind]['shown']
  by: KeptBy
  /** The draft that it was made of. */
  draft: string | null
  /** Whether what lies on the tablet already stands in its way. */
  isTaken(entries: readonly OutboxEntry[]): boolean
}

/**
 * Keeps an entry on the tablet, with its draft let go of, in one transaction: when the promise is kept it is on the disk.
 * @returns false where something stands in its way
 * @throws where the tablet cannot keep it
 */
export async function keepEntry<Kind extends EntryKind>(q: NewEntry<Kind>): Promise<boolean> {
  const { kind, content, shown, by, draft, isTaken } = q
  const payload = {
    ...content,
    id: uuid(),
    ...(isTimed(kind) ? { takenAt: new Date().toISOString() } : {}),
  } as KindFacts[Kind]['payload']
  const hash = await hashOf(textOfEntry(kind, payload))
  return inOne(async () => {
    if (isTaken(await tablet.outbox.toArray())) return false
    const counter = ((await recall('counter')) ?? 0) + 1
    await remember('counter', counter)
    const entry = {
      format: 1 as const,
      id: payload.id,
      kind,
      schema: 1 as const,
      payload,
      hash,
      counter,
      ...by,
      state: 'waiting' as const,
      refusal: null,
      words: null,
      settledAt: null,
      shown,
    }
    // Kind, payload and what is shown are of one kind, which the compiler does not see through.
    await tablet.outbox.add(entry as OutboxEntry)
    if (draft !== null) await tablet.drafts.delete(draft)
    return true
  })
}
