import { numberFormOf } from './kept-forms'
import { writeNumber } from './write-number'

/**
 * A number as it is written by hand: as many digits as it has, at most `significant` of them, with a real minus
 * (U+2212). For facts that were typed in, whose digits say how exact they are.
 * @param grouped thousands set apart; left out for the inside of a field
 * @throws RangeError when the value is not finite
 * Source: ECMA-402 Intl.NumberFormat.
 * @example plainNumber(0.5, { locale: 'en-GB' }) // '0.5'
 */
export function plainNumber(value: number, q: { locale: string; significant?: number; grouped?: boolean }): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${String(value)}`)
  return writeNumber(
    numberFormOf(q.locale, { maximumSignificantDigits: q.significant ?? 6, useGrouping: q.grouped ?? true }),
    value,
  )
}
