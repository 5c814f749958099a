import 'server-only'
import type { AsideWhy } from '../../db/generated/enums'
import type { Json } from '../../documents/canonical-text'
import { command } from '../command'
import type { RefusalCode } from '../messages'
import type { Refused } from '../result'
import { asideListeners } from './aside-listeners'
import type { SentEntry, Taken } from './entry-handler'
import { entryHandlers } from './handlers'
import { keepAside } from './keep-aside'
import { sendEntriesInput } from './send-entries.input'

export type EntryAnswer =
  | {
      outcome: 'kept'
      id: string
      hash: string
      isAgain: boolean
      about: Readonly<Record<string, string | number | boolean | null>>
    }
  | { outcome: 'aside'; id: string; hash: string; refusal: Refused }
  | { outcome: 'refused'; id: string | null; refusal: Refused }

/** What is answered of an entry that is kept aside. */
export const codeOfAside = {
  place_taken: 'aside-place-taken',
  corrected_meanwhile: 'aside-corrected',
  id_taken: 'aside-id-taken',
  reading_aside: 'aside-of-aside',
  trial_closed: 'aside-trial-closed',
} as const satisfies Record<AsideWhy, RefusalCode>

/**
 * Takes entries from outside into the book, of any kinds, each kept or refused by itself and in their order, in one
 * transaction with one entry in the record. Entries that came before are answered the same and write nothing. One that
 * cannot go where it belongs, because somebody was faster, is kept aside, whole, for somebody to settle; one of a trial
 * whose readings are closed is a proposed amendment.
 * The right is that of the door; each kind asks for its own.
 */
export const takeEntries = command({
  name: 'intake.take-entries',
  input: sendEntriesInput,
  right: 'log-reading',
  async run({ tx, actor, now, needsWayBack, input: { entries } }) {
    const found = new Map<number, Taken>()
    for (const handler of entryHandlers) {
      const places = entries.flatMap((sent, place) =>
        typeof sent.kind === 'string' && Object.hasOwn(handler.kinds, sent.kind) ? [{ place, sent }] : [],
      )
      if (places.length === 0) continue
      const own = await handler.take({ tx, actor, now, needsWayBack, entries: places.map(({ sent }) => sent) })
      for (const [at, { place }] of places.entries()) {
        const each = own[at]
        if (each) found.set(place, each)
      }
    }
    const taken = entries.map((sent, place) => found.get(place) ?? ofUnknownKind(sent))
    const rows = taken.flatMap((each) => (each.outcome === 'aside' && each.row ? [each.row] : []))
    await keepAside(tx, rows)
    const noted: Json[] = []
    for (const listen of asideListeners) noted.push(...(await listen({ tx, actor, now, rows })))

    const kept = taken.flatMap((each): Json[] => (each.outcome === 'kept' && each.note !== null ? [each.note] : []))
    const aside = rows.map(({ kind, entryId, hash, why }): Json => ({ kind, id: entryId, hash, why }))
    const notAllowed = entries.flatMap(({ kind }, index): Json[] => (isNotAllowed(taken[index]) ? [String(kind)] : []))
    const after = {
      ...(kept.length > 0 ? { kept } : {}),
      ...(aside.length > 0 ? { aside } : {}),
      ...(noted.length > 0 ? { amendments: noted } : {}),
      ...(notAllowed.length > 0 ? { notAllowed } : {}),
    }
    return {
      value: { entries: taken.map(answerOf) },
      audit: Object.keys(after).length > 0 ? { after } : null,
    }
  },
})

function ofUnknownKind({ id }: SentEntry): Taken {
  return {
    outcome: 'refused',
    id: typeof id === 'string' ? id : null,
    refusal: { code: 'invalid', facts: {}, problems: [{ path: 'kind', code: 'wrong-choice', facts: {} }] },
  }
}

function isNotAllowed(taken: Taken | undefined): boolean {
  return taken?.outcome === 'refused' && taken.refusal.code === 'not-allowed'
}

function answerOf(taken: Taken): EntryAnswer {
  switch (taken.outcome) {
    case 'kept':
      return { outcome: 'kept', id: taken.id, hash: taken.hash, isAgain: taken.isAgain, about: taken.about }
    case 'aside':
      return {
        outcome: 'aside',
        id: taken.id,
        hash: taken.hash,
        refusal: { code: codeOfAside[taken.why], facts: {}, problems: [] },
      }
    case 'refused':
      return taken
    default:
      return taken satisfies never
  }
}
