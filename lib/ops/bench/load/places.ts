import { v7 as uuid } from 'uuid'

export type Dough = { batchId: string; pieces: number }
export type LoadMeasure = { measureId: string; value: string; unit: string }
export type LoadEntry = { kind: 'reading'; id: string } & Record<string, unknown>

/** First readings of places, the next dough before the next piece, as on a floor; each place once. */
export function* readingsOf(doughs: readonly Dough[], measures: readonly LoadMeasure[]): Generator<LoadEntry> {
  const mostPieces = Math.max(...doughs.map(({ pieces }) => pieces))
  for (const measure of measures)
    for (let piece = 1; piece <= mostPieces; piece++)
      for (const { batchId, pieces } of doughs)
        if (piece <= pieces)
          yield {
            kind: 'reading',
            id: uuid(),
            batchId,
            ...measure,
            piece,
            repeat: 1,
            takenAt: new Date().toISOString(),
            confirmed: true,
          }
}
