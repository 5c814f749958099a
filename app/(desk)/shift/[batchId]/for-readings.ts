import 'server-only'
import { formatDateTime } from '@/lib/words/format/date'
import { measureMethod } from '@/lib/words/measure-method'
import { measureName } from '@/lib/words/measure-name'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'
import { sayDue } from '../say-due'
import { amountInUnits, ownUnit } from './amount-in-units'
import type { BakeryShown, BatchShown } from './batch-view'
import { keyOfPlace, type KeptReading, type MeasureToRead, type Needs, type ReadingWords } from './reading-types'

type Measure = BatchShown['measures'][number]
type Reading = BatchShown['readings'][number]

const masses = { metric: ['g', 'kg'], ounces: ['oz', 'lb'] }

/** A measure as the fields need it, with the units that this bakery types. Nobody counts a proof in seconds. */
export function asMeasureToRead(
  measure: Measure,
  isWanted: boolean,
  mind: string | null,
  bakery: BakeryShown,
  words: Words,
  language: Language,
): MeasureToRead {
  const { id, unit, level, repeats, digits, range, planned, due } = measure
  const units =
    unit === 'g'
      ? masses[bakery.massUnits]
      : unit === 's'
        ? ['min', 's', 'h']
        : unit === '°C'
          ? [ownUnit(unit, bakery)]
          : measure.units
  const shown = (value: number) => amountInUnits(value, unit, digits, bakery)
  return {
    id,
    name: measureName(measure, words),
    level,
    method: measureMethod(measure, words),
    repeats,
    units,
    least: shown(range.least),
    most: shown(range.most),
    planned: planned === null ? null : shown(planned),
    mind,
    due: due && isWanted ? sayDue(due, measureName(measure, words), bakery, words.shift.rack.due, language) : null,
    isWanted,
  }
}

/** A reading as the fields show it. */
export function asKeptReading(
  reading: Reading,
  measures: readonly Measure[],
  bakery: BakeryShown,
  words: ReadingWords,
  language: Language,
): KeptReading {
  const {
    id,
    measureId,
    piece,
    factorLevel,
    repeat,
    outside,
    valueEntered,
    unitEntered,
    supersedesId,
    reason,
    person,
    takenAt,
    mayCorrect,
  } = reading
  const measure = measures.find((each) => each.id === measureId)
  const by = { who: person.name, at: formatDateTime(takenAt, bakery) }
  return {
    id,
    measureId,
    piece,
    factorLevel,
    repeat,
    valueEntered,
    unitEntered,
    byline:
      reason === null ? say(words.inTheBook, language, by) : say(words.inTheBookCorrected, language, { ...by, reason }),
    supersedesId,
    outside:
      outside && measure
        ? {
            least: amountInUnits(outside.least, measure.unit, measure.digits, bakery),
            most: amountInUnits(outside.most, measure.unit, measure.digits, bakery),
          }
        : null,
    mayCorrect,
  }
}

/** What each place still asks for. */
export function needsByPlace(figures: BatchShown['figures']): Record<string, Needs> {
  const places = figures ? [{ piece: null, factorLevel: null, read: figures.read }, ...figures.pieces] : []
  return Object.fromEntries(
    places.flatMap(({ piece, factorLevel, read }) =>
      [...read].map(([measureId, { needs }]) => [keyOfPlace({ measureId, piece, factorLevel }), needs]),
    ),
  )
}
