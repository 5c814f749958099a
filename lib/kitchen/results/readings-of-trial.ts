import 'server-only'
import { loafFigures, type BatchFigures, type FigureMeasure, type FigureReading } from '../readings/loaf-figures'
import { valuesOfMeasure } from '../readings/values-of-measure'
import type { ConditionCode, MeasuredBatch } from './trial-facts'

type Measure = { id: string; code: string | null; level: 'batch' | 'piece' }
type Read = Pick<MeasuredBatch, 'pieces' | 'conditions'>

/** Measures that a result rests on beside its own, by their codes. */
export const usedCodes = ['dough-temp', 'proof-time', 'water-added', 'dough-mass', 'loaf-mass', 'loaf-volume'] as const

/**
 * What was read of each batch, by its id: the primary measure of each piece, and the conditions. The figures are those
 * that the shift shows: repeats are settled by the same rule. A measure of the whole batch counts as one piece.
 * @param readings those that hold; what the result does not rest on is left alone
 */
export function readingsOfTrial(q: {
  readings: readonly FigureReading[]
  measures: readonly FigureMeasure[]
  primary: Measure
}): Map<string, Read> {
  const { primary } = q
  const measures = q.measures.filter(({ id, code }) => id === primary.id || usedCodes.some((used) => used === code))
  const used = new Set(measures.map(({ id }) => id))
  const readings = q.readings.filter(({ measureId }) => used.has(measureId))
  const idOf = (code: ConditionCode) => measures.find((measure) => measure.code === code)?.id ?? ''
  return new Map(loafFigures({ readings, measures }).map((batch) => [batch.batchId, readOf(batch, primary, idOf)]))
}

function readOf(batch: BatchFigures, primary: Measure, idOf: (code: ConditionCode) => string): Read {
  const condition = (code: ConditionCode) => batch.read.get(idOf(code))?.value ?? null
  const conditions = {
    'dough-temp': condition('dough-temp'),
    'proof-time': condition('proof-time'),
    'water-added': condition('water-added'),
  }
  const values = valuesOfMeasure(batch, primary)
  if (primary.level === 'batch')
    return {
      pieces: values.map(({ value }) => ({ piece: 1, level: null, value, loafMassG: null, volumeMl: null })),
      conditions,
    }
  const pieces = batch.pieces.map(({ piece, factorLevel, figures }) => ({
    piece,
    level: factorLevel,
    value: values.find((each) => each.piece === piece && each.factorLevel === factorLevel)?.value ?? null,
    loafMassG: figures['loaf-mass'],
    volumeMl: figures['loaf-volume'],
  }))
  return { pieces, conditions }
}
