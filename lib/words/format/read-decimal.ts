import { numberFormOf } from './kept-forms'

const minus = /^[-\u2212]/

/**
 * A typed number as plain decimal text, '1234.5'. Only the locale's own decimal mark is read; a mark for thousands
 * is not, because a comma that means one thing to one baker means another to the next.
 * @returns null when it is no such number
 */
export function readDecimal(typed: string, locale: string): string | null {
  const mark =
    numberFormOf(locale, {})
      .formatToParts(1.5)
      .find((part) => part.type === 'decimal')?.value ?? '.'
  const [whole = '', part, ...rest] = typed.replace(minus, '').split(mark)
  const isNumber = rest.length === 0 && /^\d*$/.test(whole) && (part === undefined ? whole !== '' : /^\d+$/.test(part))
  if (!isNumber) return null
  return `${minus.test(typed) ? '-' : ''}${whole || '0'}${part === undefined ? '' : `.${part}`}`
}
