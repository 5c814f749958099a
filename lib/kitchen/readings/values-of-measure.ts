import 'server-only'
import { loafFigureCodes, type BatchFigures } from './loaf-figures'

export type MeasuredValue = {
  batchId: string
  piece: number | null
  factorLevel: string | null
  value: number
  settled: boolean
}

/**
 * The values of one measure in a batch, read or worked out, in the measure's base unit: one for each piece that has
 * it, or the one of the whole batch.
 */
export function valuesOfMeasure(
  batch: BatchFigures,
  measure: { id: string; code: string | null; level: 'batch' | 'piece' },
): MeasuredValue[] {
  if (measure.level === 'batch') {
    const read = batch.read.get(measure.id)
    return read
      ? [{ batchId: batch.batchId, piece: null, factorLevel: null, value: read.value, settled: read.settled }]
      : []
  }
  const code = loafFigureCodes.find((known) => known === measure.code)
  return batch.pieces.flatMap(({ piece, factorLevel, read, figures, settled }) => {
    const value = code ? figures[code] : (read.get(measure.id)?.value ?? null)
    return value === null
      ? []
      : [{ batchId: batch.batchId, piece, factorLevel, value, settled: read.get(measure.id)?.settled ?? settled }]
  })
}
