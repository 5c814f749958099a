import {
  firstOfDay,
  frictionOfDough,
  tellWater,
  type DoughTemps,
  type KnownWater,
  type ToldWater,
} from '../../kitchen/water/tell-water.input'
import { tempsOf } from '../../kitchen/water/temps-of.input'
import type { FloorDough } from '../keep/facts'
import type { OutboxEntry } from './entry'
import { placesWithEntries } from './stand-of-place'

type Dough = Pick<FloorDough, 'id' | 'code' | 'begunAt' | 'measures' | 'water'>

/** What was read on a dough, in the book or on this tablet. */
function doughTemps({ id, measures }: Dough, entries: readonly OutboxEntry[]): DoughTemps {
  return tempsOf((code) => {
    const measure = measures.find((each) => each.code === code)
    return (measure && placesWithEntries(id, measure, entries)[0]?.stands?.inBase) ?? null
  })
}

/**
 * The water of a dough, worked out on the tablet from what it keeps. The day's first dough is looked for among those of the
 * floor, where what this tablet alone knows counts, and is else what the book named when it was last asked.
 * @param dayBeganMs when the bakery's day began, by the book's clock
 */
export function waterOfDough(
  dough: Dough,
  doughs: readonly Dough[],
  entries: readonly OutboxEntry[],
  dayBeganMs: number,
): { facts: KnownWater; temps: DoughTemps; told: ToldWater } | null {
  const facts = dough.water
  if (facts?.outcome !== 'known') return null
  const onFloor = doughs.flatMap((other) => {
    const { id, code, begunAt, water } = other
    if (id === dough.id || begunAt === null || water?.outcome !== 'known') return []
    if (water.mixer.key !== facts.mixer.key) return []
    return [{ id, code, begunAtMs: Date.parse(begunAt), jPerKgMin: frictionOfDough(water, doughTemps(other, entries)) }]
  })
  const { first } = facts
  const inBook = first && first.id !== dough.id && !onFloor.some(({ id }) => id === first.id) ? [first] : []
  const temps = doughTemps(dough, entries)
  return {
    facts,
    temps,
    told: tellWater(
      facts,
      temps,
      firstOfDay([...onFloor, ...inBook].filter(({ begunAtMs }) => begunAtMs >= dayBeganMs)),
    ),
  }
}
