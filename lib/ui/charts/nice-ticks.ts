export type Ticks = {
  /** Whole multiples of the step, from the first at or below the least value to the last at or above the greatest. */
  values: number[]
  /** 1, 2 or 5 times a power of ten. */
  step: number
  /** Digits behind the mark that the values need. */
  digits: number
}

/**
 * Round values for an axis over a range.
 * @param low, high finite, low < high
 * @param most how many steps at most, ≥ 1; the outer ones may reach beyond the range
 * @throws RangeError when the range has no width
 * @example niceTicks({ low: -3.2, high: 13, most: 5 }).values // [-5, 0, 5, 10, 15]
 */
export function niceTicks(q: { low: number; high: number; most: number }): Ticks {
  const width = q.high - q.low
  if (!(width > 0) || !Number.isFinite(width)) throw new RangeError(`no width: ${q.low} to ${q.high}`)
  const least = width / Math.max(1, q.most)
  let exponent = Math.floor(Math.log10(least))
  let factor = [1, 2, 5].find((each) => each * 10 ** exponent >= least * (1 - rounding))
  if (factor === undefined) {
    factor = 1
    exponent += 1
  }
  const step = Number(`${factor}e${exponent}`)
  const first = Math.floor(q.low / step + rounding)
  const last = Math.ceil(q.high / step - rounding)
  // As an exponent and not multiplied, so that 3 × 0.1 is 0.3.
  const values = Array.from({ length: last - first + 1 }, (_, i) => Number(`${(first + i) * factor}e${exponent}`))
  return { values, step, digits: Math.max(0, -exponent) }
}

/** A value on a multiple of the step but for the last places of a double is on it. */
const rounding = 1e-9
