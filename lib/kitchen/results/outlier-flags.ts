import 'server-only'
import { grubbsTest } from '../../calc/analysis/grubbs-test'
import { studentizedResiduals, type StudentizedResiduals } from '../../calc/analysis/studentized-residuals'
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

/** What the doughs say of each other; `too-many` of them to be judged. */
export type DoughCheck = StudentizedResiduals['outcome'] | 'too-many'

/** Of loaves: at 1 % a value is called an outlier, at 5 % a straggler. ISO 5725-2:1994, 7.3.1; from memory. */
const loafAlpha = 0.01
/** Of doughs, by Bonferroni over all that can be judged; common practice, no source. */
const doughAlpha = 0.05

/**
 * The dough that lies farthest from what its kind and its day lead one to expect, or those that tie, and the loaf that
 * lies farthest from its fellows, where a test flags it. Nothing is left out for it. Doughs by externally studentized
 * residuals; loaves by Grubbs' test on their distance from their dough's mean, brought to one variance between doughs
 * of different size; with a factor within doughs loaves are not judged.
 * @param measured every dough that was read, on whatever day
 */
export function outlierFlags(q: { measured: readonly CountedBatch[]; hasFactor: boolean }): {
  flags: OutlierFlag[]
  doughs: DoughCheck
} {
  const { flags, outcome } = doughFlags(q.measured)
  const loaf = q.hasFactor ? null : loafFlag(q.measured)
  return { flags: loaf ? [...flags, loaf] : flags, doughs: outcome }
}

function doughFlags(measured: readonly CountedBatch[]): { flags: OutlierFlag[]; outcome: DoughCheck } {
  if (measured.length === 0) return { flags: [], outcome: 'cannot-be-told' }
  const judged = studentizedOrTooMany(measured)
  if (judged === 'too-many') return { flags: [], outcome: judged }
  const flags = judged.suspects.map((row): OutlierFlag => {
    const { batch, mean } = sureOf(measured[row], 'the dough of a residual')
    const p = judged.doughs.find((dough) => dough.row === row)?.pAdjusted ?? null
    return { level: 'batch', batchId: batch.id, code: batch.code, piece: null, value: mean, p: sureOf(p, 'its p') }
  })
  return { flags, outcome: judged.outcome }
}

function studentizedOrTooMany(measured: readonly CountedBatch[]): StudentizedResiduals | 'too-many' {
  try {
    return studentizedResiduals({
      rows: measured.map(({ batch, mean }) => ({ arm: String(batch.arm), block: String(batch.day), y: mean })),
      alpha: doughAlpha,
    })
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'too-large') return 'too-many'
    throw error
  }
}

/** Null with fewer than three loaves or without any spread: there is nothing to judge by. */
function loafFlag(measured: readonly CountedBatch[]): OutlierFlag | null {
  const loaves = measured.flatMap(({ batch, mean, values }) => {
    const n = values.length
    const read = batch.pieces.flatMap(({ piece, value }) => (value === null ? [] : [{ piece, value }]))
    return n < 2
      ? []
      : read.map(({ piece, value }) => ({ batch, piece, value, residual: (value - mean) * Math.sqrt(n / (n - 1)) }))
  })
  if (loaves.length < 3) return null
  try {
    const { outlier, index, p } = grubbsTest({ values: loaves.map(({ residual }) => residual), alpha: loafAlpha })
    if (!outlier) return null
    const { batch, piece, value } = sureOf(loaves[index], 'the loaf of a residual')
    return { level: 'loaf', batchId: batch.id, code: batch.code, piece, value, p }
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'zero-variance') return null
    throw error
  }
}
