import { plainNumber } from './plain-number'

const most = 6
const smallest = 1e-6
const largest = 1e15
const superscripts: Record<string, string> = {
  '-': '⁻',
  0: '⁰',
  1: '¹',
  2: '²',
  3: '³',
  4: '⁴',
  5: '⁵',
  6: '⁶',
  7: '⁷',
  8: '⁸',
  9: '⁹',
}

export type AnswerForm = {
  locale: string
  /** Digits after the decimal mark; two that mean something are kept where these would leave less. */
  decimals?: number
  /** Significant digits, beside all before the decimal mark. */
  significant?: number
}

/**
 * A number that was worked out: as exact as its unit asks, else six significant digits; every digit of a whole number,
 * and powers of ten for what is very small or very large. Without a form of its unit, a number that would read as a
 * whole one is told apart: 0.9999999 is not shown as 1.
 * @throws RangeError when the value is not finite
 * Source: powers of ten and the multiplication sign as in the SI Brochure, 9th ed., 5.4.
 * @example answerNumber(1.5e-30, { locale: 'en-GB' }) // '1.5 × 10⁻³⁰'
 */
export function answerNumber(value: number, { locale, decimals, significant }: AnswerForm): string {
  const size = Math.abs(value)
  if (value === 0) return plainNumber(0, { locale })
  if (size < smallest || size >= largest) return inPowersOfTen(value, locale)
  if (Number.isInteger(value)) return plainNumber(value, { locale, significant: 16 })
  const before = Math.max(0, Math.floor(Math.log10(size)) + 1)
  if (decimals !== undefined) return plainNumber(value, { locale, significant: size < 1 ? 2 : before + decimals })
  if (significant !== undefined) return plainNumber(value, { locale, significant: Math.max(significant, before) })
  const nearest = Number(value.toPrecision(most))
  return plainNumber(value, { locale, significant: Number.isInteger(nearest) && size < 10 ? 12 : most })
}

function inPowersOfTen(value: number, locale: string): string {
  const [digits = '', power = ''] = value.toExponential(most - 1).split('e')
  const raised = power.replace('+', '').replace(/./g, (sign) => superscripts[sign] ?? sign)
  return `${plainNumber(Number(digits), { locale, significant: most })}\u00a0×\u00a010${raised}`
}
