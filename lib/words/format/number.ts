import { numberFormOf } from './kept-forms'
import { writeNumber } from './write-number'

export type NumberForm = {
  locale: string
  /** Digits after the decimal mark, 0 to 20, always all of them: they say how exact the number is. */
  digits: number
  /** Puts a plus before what is above zero, for differences. */
  signed?: boolean
}

/**
 * A number for reading, in the locale's own marks, with a real minus (U+2212) and none before a rounded zero.
 * Halves are rounded away from zero.
 * @throws RangeError when the value is not finite, or digits are out of range
 * Source: ECMA-402 Intl.NumberFormat; minus sign: SI Brochure, 9th ed., 5.4.2 and Unicode U+2212.
 * @example formatNumber(-1234.5, { locale: 'en-GB', digits: 1 }) // '−1,234.5'
 */
export function formatNumber(value: number, { locale, digits, signed = false }: NumberForm): string {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite number: ${String(value)}`)
  return writeNumber(
    numberFormOf(locale, {
      minimumFractionDigits: digits,
      maximumFractionDigits: digits,
      signDisplay: signed ? 'exceptZero' : 'negative',
    }),
    value,
  )
}
