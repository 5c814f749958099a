import { CalcError } from '../error'
import type { Decimal } from './decimal'

/**
 * Difference of a cost from the control's, on one and the same basis (piece, kg, litre, batch).
 * @param controlMinor, armMinor ≥ 0
 * @returns arm less control, and that as a percentage of the control; null when the control costs nothing
 * @throws CalcError 'out-of-range'
 */
export function costDifference(q: { controlMinor: Decimal; armMinor: Decimal }): {
  differenceMinor: Decimal
  differencePct: Decimal | null
} {
  for (const field of ['controlMinor', 'armMinor'] as const) {
    if (!q[field].isFinite() || q[field].isNegative()) {
      throw new CalcError('out-of-range', { field, value: q[field].toString(), min: 0 })
    }
  }
  const differenceMinor = q.armMinor.minus(q.controlMinor)
  return {
    differenceMinor,
    differencePct: q.controlMinor.isZero() ? null : differenceMinor.times(100).dividedBy(q.controlMinor),
  }
}
