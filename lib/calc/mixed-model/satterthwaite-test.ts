import { fTail } from '../distributions/f-tail'
import { matrixProduct } from './matrix-product'
import { satterthwaiteDf } from './satterthwaite-df'
import { symmetricEigen } from './symmetric-eigen'
import type { Matrix } from './types'

/** Degrees of freedom closer than this are one number. */
const ALIKE = 1e-8

/**
 * Joint F test of several contrasts by Satterthwaite: contrasts turned so that they are uncorrelated, t² averaged, and
 * the denominator df that gives F the mean of those t². It depends on the basis when the data are unbalanced.
 * @param weights of each contrast, independent rows; @param coefficients of the columns
 * @param residualVariance σ²; the rest as in satterthwaiteDf
 * @returns numerator and denominator df, F and its upper tail; denominator 2 where a turned contrast has 2 df or fewer
 * Source: Fai & Cornelius (1996), J. Stat. Comput. Simul. 54; Kuznetsova, Brockhoff & Christensen (2017).
 */
export function satterthwaiteTest(q: {
  weights: readonly (readonly number[])[]
  coefficients: readonly number[]
  covariance: Matrix
  first: readonly Matrix[]
  varianceCovariance: Matrix
  residualVariance: number
}): { df1: number; df2: number; f: number; p: number } {
  const columns = q.covariance.map((_, j) => q.weights.map((row) => row[j]!))
  const { values, vectors } = symmetricEigen(matrixProduct(q.weights, q.covariance, columns))
  const turned = matrixProduct(vectors, q.weights)
  const squares = turned.map(
    (row, i) =>
      row.reduce((sum, value, j) => sum + value * q.coefficients[j]!, 0) ** 2 / (values[i]! * q.residualVariance),
  )
  const df1 = q.weights.length
  const f = squares.reduce((sum, value) => sum + value, 0) / df1
  const df2 = pooled(turned.map((weights) => satterthwaiteDf({ ...q, weights })))
  return { df1, df2, f, p: fTail({ f, df1, df2, tail: 'upper' }) }
}

function pooled(dfs: readonly number[]): number {
  const mean = dfs.reduce((sum, df) => sum + df, 0) / dfs.length
  if (dfs.every((df) => Math.abs(df - mean) <= ALIKE * mean)) return mean
  if (dfs.some((df) => df <= 2)) return 2
  const expected = dfs.reduce((sum, df) => sum + df / (df - 2), 0)
  return (2 * expected) / (expected - dfs.length)
}
