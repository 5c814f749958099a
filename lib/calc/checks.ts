import { CalcError } from './error'

/** Bounds of a quantity. `over` and `under` are open ends, `min` and `max` belong to the range. */
export type Bounds = { min?: number; max?: number; over?: number; under?: number }

/**
 * Demands a finite number inside its bounds.
 * @throws CalcError 'not-finite' | 'out-of-range', with field, value and bounds
 */
export function mustBeWithin(field: string, value: number, bounds: Bounds = {}): number {
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new CalcError('not-finite', { field, value: String(value) })
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

/** Demands a list with at most `most` members. @throws CalcError 'wrong-shape' */
export function mustHaveAtMost<T>(field: string, list: readonly T[], most: number): readonly T[] {
  if (list.length > most) throw new CalcError('wrong-shape', { field, value: list.length, max: most })
  return list
}

/** Demands that two lists are of one length. @throws CalcError 'wrong-shape' */
export function mustMatchLength(field: string, list: readonly unknown[], length: number): void {
  if (list.length !== length)
    throw new CalcError('wrong-shape', { field, value: list.length, min: length, max: length })
}

/** Demands a quantity that a choice elsewhere makes needed. @throws CalcError 'not-possible' with reason 'not-given' */
export function mustBeGiven<T>(field: string, value: T | null | undefined): T {
  if (value === null || value === undefined) throw new CalcError('not-possible', { field, reason: 'not-given' })
  return value
}

/**
 * Demands that a stated order names each of what was found once, and nothing else.
 * @throws CalcError 'duplicate'; 'wrong-shape' with reason 'unknown-level' or 'level-not-ordered' and the name
 */
export function mustOrder(field: string, order: readonly string[], found: readonly string[]): readonly string[] {
  const twice = order.find((name, i) => order.indexOf(name) < i)
  if (twice !== undefined) throw new CalcError('duplicate', { field, value: twice })
  const refuse = (value: string | undefined, reason: string) => {
    if (value !== undefined) throw new CalcError('wrong-shape', { field, value, reason })
  }
  const [ordered, known] = [new Set(order), new Set(found)]
  refuse(
    order.find((name) => !known.has(name)),
    'unknown-level',
  )
  refuse(
    found.find((name) => !ordered.has(name)),
    'level-not-ordered',
  )
  return order
}

/** Beyond this a reading's square, summed, might not be a finite number. */
const LARGEST_READING = 1e100

/** Demands a reading of any sign that can be squared and summed. @throws CalcError 'not-finite' | 'out-of-range' */
export function mustBeReading(field: string, value: number): number {
  return mustBeWithin(field, value, { min: -LARGEST_READING, max: LARGEST_READING })
}

/** At or below this share of the largest value a standard deviation is rounding, not variation. */
const LEAST_VARIATION = 1e-14

/** Demands that values vary, judged against the largest of them. @throws CalcError 'not-possible', reason 'zero-variance' */
export function mustVary(field: string, sd: number, largest: number): number {
  if (sd <= LEAST_VARIATION * largest)
    throw new CalcError('not-possible', { field, value: sd, reason: 'zero-variance' })
  return sd
}
