import { dueByAge, type Due } from '../../kitchen/readings/due-by-age.input'
import type { FloorDough } from '../keep/facts'
import type { OutboxEntry } from './entry'
import { placesWithEntries } from './stand-of-place'

/**
 * What is still to be read of a dough at an age out of the oven, with when it falls due: late first, then what is due now,
 * then what comes, the earliest first.
 */
export function dueOfDough(
  { id, bakedAt, measures }: Pick<FloorDough, 'id' | 'bakedAt' | 'measures'>,
  entries: readonly OutboxEntry[],
  now: number,
): { measure: string; due: Due }[] {
  return measures
    .filter(
      (measure) => measure.isWanted && placesWithEntries(id, measure, entries).some(({ stands }) => stands === null),
    )
    .flatMap((measure) => {
      const due = dueByAge(measure, bakedAt === null ? null : Date.parse(bakedAt), now)
      return due ? [{ measure: measure.name, due }] : []
    })
    .sort((a, b) => rank(a.due) - rank(b.due) || momentOf(a.due) - momentOf(b.due))
}

function rank({ when }: Due): number {
  return { late: 0, now: 1, later: 2 }[when]
}

function momentOf(due: Due): number {
  switch (due.when) {
    case 'later':
      return due.from
    case 'now':
      return due.until ?? Infinity
    case 'late':
      return due.since
    default:
      return due satisfies never
  }
}
