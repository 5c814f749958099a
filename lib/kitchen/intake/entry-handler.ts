import 'server-only'
import type { z } from 'zod'
import { mayTry, type ActorOf, type Right } from '../../auth/rights'
import type { Db, Tx } from '../../db/client'
import type { AsideWhy } from '../../db/generated/enums'
import { log } from '../../db/log'
import type { Json } from '../../documents/canonical-text'
import { hashOfText } from '../../documents/hash-of-text'
import { parseOrRefuse } from '../answer'
import { refusalOfConstraint } from '../constraint-refusals'
import { Refusal } from '../refusal'
import type { Refused } from '../result'
import type { AsideRow } from './keep-aside'
import { keepByHalves } from './keep-by-halves'

/** Whoever may send entries at all; each kind asks for its own right. */
export type Sender = ActorOf<'log-reading'>

export type EntryKind = {
  /** What an entry of this kind holds beside its kind. It has an `id`, made by the sender. */
  input: z.ZodObject
  right: Right
  /** What the book says of a kept one, beside id and hash. */
  answer: z.ZodObject
}

/** An entry as it was sent. */
export type SentEntry = { readonly kind?: unknown; readonly id?: unknown; readonly [field: string]: unknown }

type About = Readonly<Record<string, string | number | boolean | null>>
type Whereabouts = { trialId: string; batchId: string }

/** What became of an entry. */
export type Taken =
  /** In the book; the note is the record's, none when it was there already. */
  | { outcome: 'kept'; id: string; hash: string; isAgain: boolean; about: About; note: Json | null }
  /** Kept whole for somebody to settle; the row is to be written, none when it is there already. */
  | { outcome: 'aside'; id: string; hash: string; why: AsideWhy; row: AsideRow | null }
  /** Nothing of it was kept. */
  | { outcome: 'refused'; id: string | null; refusal: Refused }

/** How entries of some kinds are taken in. */
export type EntryHandler = {
  kinds: Readonly<Record<string, EntryKind>>
  /** @returns what became of each entry, in their order */
  take(q: { tx: Tx; actor: Sender; now: Date; needsWayBack: boolean; entries: readonly SentEntry[] }): Promise<Taken[]>
  held: FindHeld
}

/** Which of these ids are in the book, each with the hash that its sender was answered with. */
type FindHeld = (from: Db, bakeryId: string, ids: string[]) => PromiseLike<{ id: string; contentHash: string }[]>

export type EntryVerdict<Row> =
  /** Without a dough it cannot be kept aside, which is kept by the dough. */
  | { outcome: 'ready'; row: Row; at: Whereabouts | null; about: About; note: { [name: string]: Json } }
  | { outcome: 'again'; about: About }
  | { outcome: 'aside'; at: Whereabouts; why: AsideWhy; isAgain: boolean }

type HandlerSpec<Entry extends { id: string }, Facts, Row> = {
  kinds: Readonly<Record<string, EntryKind & { input: z.ZodType<Entry> }>>
  /** The one text of an entry's content; its hash is what the sender is answered with. */
  textOf(entry: Entry): string
  /** Locks what the entries rest on and reads it, for all of them at once: a few statements, however many they are. */
  load(tx: Tx, bakeryId: string, entries: readonly Entry[]): Promise<Facts>
  /** Judges one entry by the facts alone. @throws Refusal for one of which nothing is kept */
  judge(entry: Entry, facts: Facts, by: { actor: Sender; now: Date }): EntryVerdict<Row>
  /** Lets the facts know of what was judged, for the entries behind it. */
  note(facts: Facts, row: Row): void
  noteAside(facts: Facts, entryId: string, aside: Whereabouts & { hash: string; why: AsideWhy }): void
  /** Writes rows by one statement, in their order. */
  keep(tx: Tx, rows: readonly Row[]): Promise<void>
  held: FindHeld
  /** Constraints whose refusal means that somebody else was faster by a moment. */
  whyAside: Readonly<Record<string, AsideWhy>>
}

type Read<Entry> = { kind: string; entry: Entry; hash: string }
type Ready<Row> = { row: Row; index: number; at: Whereabouts | null }

/**
 * Makes a handler: each entry is read by its kind's schema and right, all are judged in their order, each with what the
 * ones before it will have done, and the good ones are written by one statement.
 */
export function entryHandler<Entry extends { id: string }, Facts, Row>(
  spec: HandlerSpec<Entry, Facts, Row>,
): EntryHandler {
  return {
    kinds: spec.kinds,
    held: spec.held,
    async take({ tx, actor, now, needsWayBack, entries }) {
      const read = entries.map((sent) => refusedOr(sent, () => readEntry(spec, actor, sent)))
      const readable = read.flatMap((each) => ('outcome' in each ? [] : [each.entry]))
      if (readable.length === 0) return read.flatMap((each) => ('outcome' in each ? [each] : []))
      const facts = await spec.load(tx, actor.bakeryId, readable)
      const ready: Ready<Row>[] = []
      const firstOf = new Map<string, number>()
      const taken = read.map((each, index): Taken => {
        if ('outcome' in each) return each
        return refusedOr(entries[index] ?? {}, () => {
          const { entry, hash } = each
          const key = `${entry.id.toLowerCase()} ${hash}`
          const verdict = spec.judge(entry, facts, { actor, now })
          switch (verdict.outcome) {
            case 'ready':
              ready.push({ row: verdict.row, index, at: verdict.at })
              firstOf.set(key, index)
              spec.note(facts, verdict.row)
              return {
                outcome: 'kept',
                id: entry.id,
                hash,
                isAgain: false,
                about: verdict.about,
                note: { kind: each.kind, id: entry.id, ...verdict.note },
              }
            case 'again':
              return {
                outcome: 'kept',
                id: entry.id,
                hash,
                isAgain: true,
                about: verdict.about,
                note: null,
              }
            case 'aside':
              if (!verdict.isAgain)
                spec.noteAside(facts, entry.id.toLowerCase(), { ...verdict.at, hash, why: verdict.why })
              return asideOf(spec, actor, now, each, verdict.at, verdict.why, verdict.isAgain)
            default:
              return verdict satisfies never
          }
        })
      })
      for (const { item, constraint } of await keepByHalves(tx, needsWayBack, ready, (items) =>
        spec.keep(
          tx,
          items.map(({ row }) => row),
        ),
      )) {
        const each = read[item.index]
        if (!each || 'outcome' in each) throw new Error('what was refused was not to be kept')
        const why = constraint === null ? undefined : spec.whyAside[constraint]
        const refusal =
          (constraint === null ? undefined : refusalOfConstraint(constraint)) ?? new Refusal('entry-not-kept')
        taken[item.index] =
          why && item.at
            ? asideOf(spec, actor, now, each, item.at, why, false)
            : { outcome: 'refused', id: each.entry.id, refusal: plain(refusal) }
      }
      // The same entry further on in the request fares as the first one did.
      return taken.map((each, index) => {
        if (each.outcome !== 'kept' || !each.isAgain) return each
        const first = firstOf.get(`${each.id.toLowerCase()} ${each.hash}`)
        const fate = first === undefined || first >= index ? undefined : taken[first]
        if (!fate || fate.outcome === 'kept') return each
        return fate.outcome === 'aside' ? { ...fate, row: null } : fate
      })
    },
  }
}

function readEntry<Entry extends { id: string }, Facts, Row>(
  spec: HandlerSpec<Entry, Facts, Row>,
  actor: Sender,
  { kind, ...content }: SentEntry,
): Read<Entry> {
  const found = typeof kind === 'string' ? spec.kinds[kind] : undefined
  if (!found) throw Refusal.at('kind', 'wrong-choice')
  if (!mayTry(actor, found.right)) throw new Refusal('not-allowed')
  const entry: Entry = parseOrRefuse<z.ZodType<Entry>>(found.input, content)
  return { kind: String(kind), entry, hash: hashOfText(spec.textOf(entry)) }
}

function asideOf<Entry extends { id: string }>(
  spec: { textOf(entry: Entry): string },
  actor: Sender,
  now: Date,
  { kind, entry, hash }: Read<Entry>,
  at: Whereabouts,
  why: AsideWhy,
  isAgain: boolean,
): Taken {
  const row = {
    bakeryId: actor.bakeryId,
    entryId: entry.id.toLowerCase(),
    hash,
    kind,
    text: spec.textOf(entry),
    why,
    ...at,
    sentById: actor.personId,
    receivedAt: now,
  }
  return { outcome: 'aside', id: entry.id, hash, why, row: isAgain ? null : row }
}

/** One entry that is at fault, or that we are at fault with, must not keep the others from the book. */
function refusedOr<Good>(sent: SentEntry, work: () => Good): Good | Extract<Taken, { outcome: 'refused' }> {
  try {
    return work()
  } catch (error) {
    if (!(error instanceof Refusal)) log.error({ event: 'entry-not-judged', error })
    return {
      outcome: 'refused',
      id: typeof sent.id === 'string' ? sent.id : null,
      refusal: plain(error instanceof Refusal ? error : new Refusal('entry-not-kept')),
    }
  }
}

function plain({ code, facts, problems }: Refusal): Refused {
  return { code, facts, problems }
}
