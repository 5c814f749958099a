import 'server-only'
import { groupBy } from '../../calc/group-by'
import { isReadOfEveryDough } from './before-mixing.input'
import { decidingMeasures } from './deciding-measures'
import { piecesToRead } from './pieces-to-read'
import type { PlausibleRange } from './plausible-range'
import { isOutside, rangeOfReading, type JudgedReading } from './range-of-reading'
import { settleRepeats } from './settle-repeats.input'

export type GapMeasure = {
  id: string
  code: string | null
  name: string
  unit: string
  digits: number
  level: 'batch' | 'piece'
  derivation: string | null
  repeats: number
  repeatLimit: number | null
  plausibleLeast: number
  plausibleMost: number
}
export type GapReading = JudgedReading & {
  id: string
  measureId: string
  piece: number | null
  factorLevel: string | null
  repeat: number
}

type OfMeasure = { measure: Pick<GapMeasure, 'id' | 'code' | 'name' | 'unit' | 'digits'> }
type OfPlace = OfMeasure & { piece: number | null; factorLevel: string | null }

/** What is still so with a batch, of which a result has to be told. */
export type Gap =
  /** Fewer pieces were made than the plan reads. */
  | { kind: 'fewer-pieces'; have: number; of: number }
  /** Readings that are to be taken and are not there. */
  | ({ kind: 'missing'; have: number; of: number } & OfMeasure)
  /** Two readings disagree, and the third that settles it is not taken. */
  | ({ kind: 'unsettled' } & OfPlace)
  /** A reading is outside what is usual, and somebody confirmed it. */
  | ({ kind: 'outside'; readingId: string; value: number } & PlausibleRange & OfPlace)
  /** Entries from outside came too late for their place, are kept aside, and nobody settled them. */
  | { kind: 'to-settle'; count: number }

/**
 * Everything that is missing, unsettled, odd or kept aside about a batch. Wanted are the readings of the whole batch that every
 * bakery takes (they say what else differed), and those that the trial's own measure rests on, once for each repeat
 * and piece. Other measures may be read and are never missing; what was read of them can be unsettled or odd.
 * @param decidingMeasureId the trial's primary measure; a worked-out one stands for the measures it is worked out of
 * @param readings of the batch, those that hold
 * @param toSettle how many entries of the batch are kept aside
 */
export function gapsOfBatch(q: {
  measures: readonly GapMeasure[]
  decidingMeasureId: string
  piecesPerBatch: number
  piecesMade: number | null
  readings: readonly GapReading[]
  toSettle: number
}): Gap[] {
  const pieces = piecesToRead(q.piecesPerBatch, q.piecesMade)
  const fewer: Gap[] = pieces < q.piecesPerBatch ? [{ kind: 'fewer-pieces', have: pieces, of: q.piecesPerBatch }] : []
  const aside: Gap[] = q.toSettle > 0 ? [{ kind: 'to-settle', count: q.toSettle }] : []
  return [
    ...fewer,
    ...q.measures.flatMap((measure) => missingOf(measure, pieces, q)),
    ...q.measures.flatMap((measure) => faultsOf(measure, q.readings)),
    ...aside,
  ]
}

type Asked = Parameters<typeof gapsOfBatch>[0]

function missingOf(measure: GapMeasure, pieces: number, { measures, decidingMeasureId, readings }: Asked): Gap[] {
  const { id, level, derivation, repeats } = measure
  const isDeciding = decidingMeasures(measures, decidingMeasureId).has(id)
  const wanted = derivation === null && (isDeciding || isReadOfEveryDough(measure))
  if (!wanted) return []
  const of = level === 'batch' ? repeats : repeats * pieces
  const places = readings.filter(
    (reading) => reading.measureId === id && reading.repeat <= repeats && (reading.piece ?? 1) <= Math.max(1, pieces),
  )
  const have = new Set(places.map(({ piece, repeat }) => `${piece} ${repeat}`)).size
  return have < of ? [{ kind: 'missing', measure: named(measure), have, of }] : []
}

function faultsOf(measure: GapMeasure, readings: readonly GapReading[]): Gap[] {
  const own = readings.filter(({ measureId }) => measureId === measure.id)
  const places = [...groupBy(own, ({ piece, factorLevel }) => `${piece} ${factorLevel}`).values()]
  const unsettled = places.flatMap((atPlace): Gap[] => {
    const [first] = atPlace
    const values = [...atPlace].sort((a, b) => a.repeat - b.repeat).map(({ value }) => value)
    if (
      !first ||
      settleRepeats({ values, repeats: measure.repeats, repeatLimit: measure.repeatLimit }).needs !== 'third'
    )
      return []
    return [{ kind: 'unsettled', measure: named(measure), piece: first.piece, factorLevel: first.factorLevel }]
  })
  const outside = own
    .filter((reading) => isOutside(reading, measure))
    .map(
      ({ id, value, piece, factorLevel, ...range }): Gap => ({
        kind: 'outside',
        readingId: id,
        measure: named(measure),
        piece,
        factorLevel,
        value,
        ...rangeOfReading(range, measure),
      }),
    )
  return [...unsettled, ...outside]
}

function named({ id, code, name, unit, digits }: GapMeasure): OfMeasure['measure'] {
  return { id, code, name, unit, digits }
}
