import { crossProducts } from '@/lib/calc/mixed-model/cross-products'
import { designMatrix } from '@/lib/calc/mixed-model/design-matrix'
import type { CrossProducts, MixedModel, MixedRow } from '@/lib/calc/mixed-model/types'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'

export type Shape = {
  arms: number
  blocks: number
  pieces: number
  batchSd: number
  blockSd?: number
  /** Leaves out about a third of the pieces, never the first of a batch. */
  unbalanced?: boolean
}

/** A made-up trial: arms × blocks batches, effects of arm, level (of the pieces in turn) and dough temperature. */
export function mixedTrial(seed: string, shape: Shape): { rows: MixedRow[]; arms: string[] } {
  const random = seededRandom(seed)
  const deviate = () => normalDeviate(random)
  const arms = Array.from({ length: shape.arms }, (_, i) => `arm ${i}`)
  const rows: MixedRow[] = []
  for (let block = 0; block < shape.blocks; block++) {
    const day = (shape.blockSd ?? 1) * deviate()
    arms.forEach((arm, i) => {
      const batch = shape.batchSd * deviate()
      const doughTempC = 26 + deviate()
      for (let piece = 0; piece < shape.pieces; piece++) {
        const y = 50 + 2 * i + day + batch + 0.3 * doughTempC + (piece % 2) + deviate()
        const kept = !shape.unbalanced || piece === 0 || random() > 1 / 3
        const factors = { batch: `${block} ${i}`, block: String(block), level: String(piece % 2) }
        if (kept) rows.push({ arm, factors, covariates: { doughTempC }, y })
      }
    })
  }
  return { rows, arms }
}

/** Products of a made-up trial, and the n × n matrices that they stand for. */
export function productsOf(q: { rows: readonly MixedRow[]; model: MixedModel }): {
  cross: CrossProducts
  u: number[][]
  groups: number[][][]
} {
  const { x } = designMatrix(q)
  const u = x.map((row, i) => [...row, q.rows[i]!.y - 60])
  const random = q.model.random.map((name) => ({ name, levels: q.rows.map((row) => row.factors[name]!) }))
  const cross = crossProducts({ u, random })
  const groups = cross.names.map((name) =>
    q.rows.map((a) => q.rows.map((b) => (a.factors[name] === b.factors[name] ? 1 : 0))),
  )
  return { cross, u, groups }
}

/** V = I + Σ θₖ Gₖ, whole. */
export function denseV(groups: readonly number[][][], ratios: readonly number[]): number[][] {
  return groups[0]!.map((row, i) =>
    row.map((_, j) => groups.reduce((sum, group, k) => sum + ratios[k]! * group[i]![j]!, i === j ? 1 : 0)),
  )
}

export const transposed = (matrix: readonly (readonly number[])[]) =>
  matrix[0]!.map((_, j) => matrix.map((row) => row[j]!))

/** Expected closeness of every number of a matrix. */
export const near = (matrix: readonly (readonly number[])[], digits: number) =>
  matrix.map((row) => row.map((value) => expectClose(value, digits)))

function expectClose(value: number, digits: number): unknown {
  return {
    asymmetricMatch: (other: unknown) =>
      typeof other === 'number' && Math.abs(other - value) <= 10 ** -digits * (1 + Math.abs(value)),
  }
}
