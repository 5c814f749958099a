import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'

export type LoafReading = { arm: string; block?: string; batch: string; loaf: string; value: number }

export type BatchMean = {
  batch: string
  arm: string
  block?: string
  mean: number
  loafCount: number
  /** Sum of squares of the loaf means about the batch mean, loafCount − 1 df. */
  loafSumSquares: number
}

/**
 * Batch means: repeat readings are averaged within a loaf first, then every loaf counts once.
 * The batch (one mix) is the experimental unit; loaves of a batch are not replicates of the arm.
 * @param readings one or more; names are text, values finite in the measure's own unit
 * @returns one mean per batch, in order of first appearance
 * @throws CalcError 'empty' | 'not-finite'; 'wrong-shape' with reason 'batch-in-two-arms' or 'batch-in-two-blocks'
 * Source: Hurlbert (1984), Ecological Monographs 54 (pseudoreplication); Cochran & Cox (1957), chapter 2.
 */
export function batchMeans(readings: readonly LoafReading[]): BatchMean[] {
  mustHaveAtLeast('readings', readings, 1)
  const batches = new Map<string, { arm: string; block?: string; loaves: Map<string, number[]> }>()
  readings.forEach((reading, i) => {
    mustBeWithin(`readings[${i}].value`, reading.value)
    const batch = batches.get(reading.batch) ?? {
      arm: reading.arm,
      block: reading.block,
      loaves: new Map<string, number[]>(),
    }
    if (batch.arm !== reading.arm) {
      throw new CalcError('wrong-shape', {
        field: `readings[${i}].arm`,
        value: reading.arm,
        reason: 'batch-in-two-arms',
      })
    }
    if (batch.block !== reading.block) {
      throw new CalcError('wrong-shape', {
        field: `readings[${i}].block`,
        value: reading.block,
        reason: 'batch-in-two-blocks',
      })
    }
    batch.loaves.set(reading.loaf, [...(batch.loaves.get(reading.loaf) ?? []), reading.value])
    batches.set(reading.batch, batch)
  })
  return [...batches].map(([name, { arm, block, loaves }]) => {
    const values = [...loaves.values()].map(mean)
    const batchMean = mean(values)
    const loafSumSquares = values.reduce((sum, value) => sum + (value - batchMean) ** 2, 0)
    return {
      batch: name,
      arm,
      ...(block === undefined ? {} : { block }),
      mean: batchMean,
      loafCount: values.length,
      loafSumSquares,
    }
  })
}

/** Two passes, so that a large common part costs no digits. */
function mean(values: readonly number[]): number {
  const first = values.reduce((sum, value) => sum + value, 0) / values.length
  return first + values.reduce((sum, value) => sum + (value - first), 0) / values.length
}
