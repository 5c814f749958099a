import { becomesOfPieces, type PieceFigures } from '../../kitchen/shifts/count-fault.input'
import type { FloorDough } from '../keep/facts'
import type { EntryOf, EntryState, OutboxEntry } from './entry'
import { holds } from './holds'

/** What is counted, in the order in which it is asked. */
export const counted = ['made', 'good', ...becomesOfPieces] as const
export type Counted = (typeof counted)[number]

export type StoodCount = PieceFigures & { id: string; at: number; who: string; state: EntryState }

/**
 * The count of a dough that stands: the latest of what the book said and of what lies on the tablet.
 * @returns null where nobody has counted
 */
export function countOfDough(
  { id, count }: Pick<FloorDough, 'id' | 'count'>,
  entries: readonly OutboxEntry[],
  aheadMs: number,
): StoodCount | null {
  const own = entries
    .filter((entry) => entry.kind === 'count')
    .filter((entry) => holds(entry) && entry.payload.batchId === id)
    .map(
      (entry): StoodCount => ({
        ...entry.payload,
        at: momentOf(entry, aheadMs),
        who: entry.personName,
        state: entry.state,
      }),
    )
  const inBook = count && { ...count, at: Date.parse(count.at) - aheadMs, state: 'book' as const }
  // What the book has of this tablet's own says it with the book's moment.
  const others = inBook ? [inBook, ...own.filter((each) => each.id !== inBook.id)] : own
  const [latest] = others.sort((a, b) => b.at - a.at || (a.id < b.id ? 1 : -1))
  return latest ?? null
}

/** What was typed of a count; null for what was not. */
export function readCount(typed: Partial<Record<Counted, string>>): { [What in Counted]: number | null } {
  const number = (what: Counted) => (/^\d+$/.test(typed[what] ?? '') ? Number(typed[what]) : null)
  const [made, good, sampled, sold, given, wasted] = counted.map(number)
  return {
    made: made ?? null,
    good: good ?? null,
    sampled: sampled ?? null,
    sold: sold ?? null,
    given: given ?? null,
    wasted: wasted ?? null,
  }
}

/** The tablet's clock may have been set since: what it said then is put right by what it knew of itself then. */
function momentOf({ payload: { takenAt, clockAheadS } }: EntryOf<'count'>, aheadMs: number): number {
  const at = Date.parse(takenAt)
  return clockAheadS === null || clockAheadS === undefined ? at : at + clockAheadS * 1000 - aheadMs
}
