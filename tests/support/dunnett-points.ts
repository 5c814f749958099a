import type { CalcId } from '@/lib/calc/catalogue'
import { dunnettLoadings } from '@/lib/calc/distributions/dunnett-loadings'
import { dunnettQuantile } from '@/lib/calc/distributions/dunnett-quantile'
import { dunnettTail } from '@/lib/calc/distributions/dunnett-tail'

/** A point of a fixture of Dunnett's distribution: a critical value where a confidence is given, else a probability. */
export type DunnettPoint = {
  n_control: number
  n_treatments: number[]
  df: number
  alternative: string
  confidence?: number
  c?: number
  tail?: string
}

export function dunnettAt(point: DunnettPoint): number {
  const q = {
    df: point.df,
    loadings: dunnettLoadings({ controlCount: point.n_control, armCounts: point.n_treatments }),
    sides: point.alternative === 'two-sided' ? ('two' as const) : ('one' as const),
  }
  if (point.confidence !== undefined) return dunnettQuantile({ ...q, p: 1 - point.confidence })
  return dunnettTail({ ...q, c: point.c ?? NaN })[point.tail === 'lower' ? 'lower' : 'upper']
}

export function dunnettEntryOf(point: DunnettPoint): CalcId {
  return point.confidence === undefined ? 'distributions/dunnett-tail' : 'distributions/dunnett-quantile'
}
