import { dateFormOf } from '../../words/format/kept-forms'
import { plainNumber } from '../../words/format/plain-number'
import { withUnit } from '../../words/format/with-unit'

/** The decimal mark of a locale. */
export function decimalMark(locale: string): string {
  return plainNumber(1.5, { locale }).slice(1, 2)
}

/** A number as it is typed, in the bakery's own mark. */
export function shownTyped(text: string, locale: string): string {
  return text.replace('.', decimalMark(locale)).replace('-', '\u2212')
}

/** A number as it is typed and kept, with a point, in the bakery's own mark and with its unit. */
export function shownValue(value: string, unit: string, locale: string): string {
  return withUnit(shownTyped(value, locale), unit)
}

/** An end of a range, with its unit. */
export function shownEnd(value: number, unit: string, locale: string): string {
  return withUnit(plainNumber(value, { locale }), unit)
}

/** A time of day on the bakery's clock. */
export function shownTime(at: string | number, { locale, timeZone }: { locale: string; timeZone: string }): string {
  return dateFormOf(locale, { hour: '2-digit', minute: '2-digit', timeZone }).format(new Date(at))
}
