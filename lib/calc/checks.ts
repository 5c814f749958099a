import { CalcError } from './error'

/** Bounds of a quantity. `over` and `under` are open ends, `min` and `max` belong to the range. */
export type Bounds = { min?: number; max?: number; over?: number; under?: number }

/**
 * Demands a finite number inside its bounds.
 * @throws CalcError 'not-finite' | 'out-of-range', with field, value and bounds
 */
export function mustBeWithin(field: string, value: number, bounds: Bounds = {}): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) throw new CalcError('not-finite', { field, value: String(value) })
  const low = (bounds.min !== undefined && value < bounds.min) || (bounds.over !== undefined && value <= bounds.over)
  const high = (bounds.max !== undefined && value > bounds.max) || (bounds.under !== undefined && value >= bounds.under)
  if (low || high) {
    throw new CalcError('out-of-range', {
      field,
      value,
      min: bounds.min ?? bounds.over,
      max: bounds.max ?? bounds.under,
    })
  }
  return value
}

/**
 * Demands a whole number inside its bounds.
 * @throws CalcError 'not-finite' | 'out-of-range', with reason 'not-whole' where that is the fault
 */
export function mustBeWhole(field: string, value: number, bounds: { min?: number; max?: number } = {}): number {
  mustBeWithin(field, value, bounds)
  if (!Number.isInteger(value)) throw new CalcError('out-of-range', { field, value, ...bounds, reason: 'not-whole' })
  return value
}

/** Demands a list with at least `least` members. @throws CalcError 'empty' */
export function mustHaveAtLeast<T>(field: string, list: readonly T[], least: number): readonly T[] {
  if (list.length < least) throw new CalcError('empty', { field, value: list.length, min: least })
  return list
}

/** Demands that two lists are of one length. @throws CalcError 'wrong-shape' */
export function mustMatchLength(field: string, list: readonly unknown[], length: number): void {
  if (list.length !== length) throw new CalcError('wrong-shape', { field, value: list.length, min: length, max: length })
}

/** Demands a quantity that a choice elsewhere makes needed. @throws CalcError 'not-possible' with reason 'not-given' */
export function mustBeGiven<T>(field: string, value: T | null | undefined): T {
  if (value === null || value === undefined) throw new CalcError('not-possible', { field, reason: 'not-given' })
  return value
}
