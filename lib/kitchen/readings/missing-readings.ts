import 'server-only'

export type ReadMeasure = { id: string; code: string | null; level: 'batch' | 'piece'; derivation: string | null; repeats: number }
export type MissingReadings = { measureId: string; have: number; of: number }

/**
 * Which readings a batch still lacks: those of the whole batch that every bakery takes (they say what else differed),
 * and those that the trial's own measure rests on, once for each repeat and piece. Other measures may be read and are
 * never missing.
 * @param decidingMeasureId the trial's primary measure; a worked-out one stands for the measures it is worked out of
 * @param pieces how many are to be read
 * @param readings those that hold
 */
export function missingReadings(q: {
  measures: readonly ReadMeasure[]
  decidingMeasureId: string
  pieces: number
  readings: readonly { measureId: string; piece: number | null; repeat: number }[]
}): MissingReadings[] {
  const deciding = decidingCodes(q.measures.find(({ id }) => id === q.decidingMeasureId))
  return q.measures.flatMap(({ id, code, level, derivation, repeats }) => {
    const wanted = derivation === null && (id === q.decidingMeasureId || (code !== null && (level === 'batch' || deciding.has(code))))
    if (!wanted) return []
    const of = level === 'batch' ? repeats : repeats * q.pieces
    const places = q.readings.filter((reading) => reading.measureId === id && reading.repeat <= repeats && (reading.piece ?? 1) <= Math.max(1, q.pieces))
    const have = new Set(places.map(({ piece, repeat }) => `${piece} ${repeat}`)).size
    return have < of ? [{ measureId: id, have, of }] : []
  })
}

function decidingCodes(measure: ReadMeasure | undefined): ReadonlySet<string> {
  return new Set(measure?.derivation?.match(/[a-z]+(-[a-z]+)*/g))
}
