import { CalcError } from '../error'
import type { Design } from './types'

/** A column whose length beside those before it is less than 1e-5 of its own counts as made up of them. */
const DEPENDENT = 1e-10

/**
 * Demands that every effect of the fixed part can be told from the others, and names what it is mixed up with.
 * @throws CalcError 'not-possible' with the term as field: reason 'constant' (a covariate of one value), 'empty-cell'
 * (value: arm and level of the interaction without rows), 'confounded' (value: the terms that it cannot be told from);
 * field 'rows', reason 'no-residual-df' (no more readings than effects)
 * Source: Searle (1971), Linear Models, section 5.4 (estimability): here every column is to be estimable.
 */
export function mustBeEstimable(design: Design): void {
  const { x, columns } = design
  const p = columns.length
  const products = columns.map((_, i) =>
    columns.map((__, j) => (j <= i ? x.reduce((sum, row) => sum + row[i]! * row[j]!, 0) : 0)),
  )
  const lower = columns.map(() => new Array<number>(p).fill(0))
  for (let i = 0; i < p; i++) {
    const { term, level, arm } = columns[i]!
    const size = products[i]![i]!
    if (level === null && i > 0) {
      const mean = design.covariateMeans[term]!
      if (Math.sqrt(size / x.length) <= 1e-12 * Math.abs(mean))
        throw new CalcError('not-possible', { field: term, value: mean, reason: 'constant' })
    }
    if (arm !== null && size === 0)
      throw new CalcError('not-possible', { field: term, value: `${arm}, ${level ?? ''}`, reason: 'empty-cell' })
    let left = size
    for (let j = 0; j < i; j++) {
      let sum = products[i]![j]!
      for (let m = 0; m < j; m++) sum -= lower[i]![m]! * lower[j]![m]!
      lower[i]![j] = sum / lower[j]![j]!
      left -= lower[i]![j]! ** 2
    }
    if (!(left > DEPENDENT * size))
      throw new CalcError('not-possible', { field: term, value: partners(design, lower, i), reason: 'confounded' })
    lower[i]![i] = Math.sqrt(left)
  }
  if (x.length <= p)
    throw new CalcError('not-possible', { field: 'rows', value: x.length, min: p + 1, reason: 'no-residual-df' })
}

/** Terms whose columns add up to column i, the intercept only where there is no other. */
function partners({ columns, x }: Design, lower: readonly (readonly number[])[], i: number): string {
  const weights = [...lower[i]!.slice(0, i)]
  for (let j = i - 1; j >= 0; j--) {
    for (let m = j + 1; m < i; m++) weights[j]! -= lower[m]![j]! * weights[m]!
    weights[j]! /= lower[j]![j]!
  }
  const length = (j: number) => Math.sqrt(x.reduce((sum, row) => sum + row[j]! ** 2, 0))
  const whole = length(i)
  const terms = weights.flatMap((weight, j) =>
    j > 0 && Math.abs(weight) * length(j) > 1e-4 * whole ? [columns[j]!.term] : [],
  )
  return [...new Set(terms)].join(', ') || 'intercept'
}
