import 'server-only'
import { grubbsTest } from '../../calc/analysis/grubbs-test'
import { CalcError } from '../../calc/error'
import { sureOf } from '../sure-of'
import type { CountedBatch } from './count-batches'

export type OutlierFlag = {
  level: 'batch' | 'loaf'
  batchId: string
  code: string
  /** Number of the loaf in its batch; null for a whole batch. */
  piece: number | null
  value: number
  p: number
}

/** At 1 % a value is called an outlier, at 5 % a straggler. ISO 5725-2:1994, 7.3.1; from memory. */
const alpha = 0.01

/**
 * The batch, and the loaf within its batch, that lies farthest from what was expected of it, where Grubbs' test flags
 * it. Nothing is left out for it. Loaves are judged by their distance from their batch's mean, brought to one variance
 * between batches of different size; with a factor within batches they are not judged.
 * @param residuals of the batches, in their order; null when there was no fit
 */
export function outlierFlags(q: {
  counted: readonly CountedBatch[]
  residuals: readonly number[] | null
  hasFactor: boolean
}): OutlierFlag[] {
  const flags: OutlierFlag[] = []
  const farBatch = q.residuals && flagged(q.residuals)
  if (farBatch) {
    const { batch, mean } = sureOf(q.counted[farBatch.index], 'the batch of a residual')
    flags.push({ level: 'batch', batchId: batch.id, code: batch.code, piece: null, value: mean, p: farBatch.p })
  }
  if (q.hasFactor) return flags
  const loaves = q.counted.flatMap(({ batch, mean, values }) => {
    const n = values.length
    const read = batch.pieces.flatMap(({ piece, value }) => (value === null ? [] : [{ piece, value }]))
    return n < 2
      ? []
      : read.map(({ piece, value }) => ({ batch, piece, value, residual: (value - mean) * Math.sqrt(n / (n - 1)) }))
  })
  const farLoaf = flagged(loaves.map(({ residual }) => residual))
  if (farLoaf) {
    const { batch, piece, value } = sureOf(loaves[farLoaf.index], 'the loaf of a residual')
    flags.push({ level: 'loaf', batchId: batch.id, code: batch.code, piece, value, p: farLoaf.p })
  }
  return flags
}

/** Undefined with fewer than three values or without any spread: there is nothing to judge by. */
function flagged(values: readonly number[]): { index: number; p: number } | undefined {
  if (values.length < 3) return undefined
  try {
    const { outlier, index, p } = grubbsTest({ values, alpha })
    return outlier ? { index, p } : undefined
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'zero-variance') return undefined
    throw error
  }
}
