import { numberFormOf } from './kept-forms'

/**
 * A number in the marks of a form's locale, money in the same as other numbers, with a real minus (U+2212) where the form writes a hyphen.
 * @param value a number, or decimal text, which is written exactly
 * Source: ECMA-402; minus sign: SI Brochure, 9th ed., 5.4.2 and Unicode U+2212.
 */
export function writeNumber(form: Intl.NumberFormat, value: number | string): string {
  const { locale, style } = form.resolvedOptions()
  const marks = style === 'currency' ? marksOf(locale) : null
  return form
    .formatToParts(value as Intl.StringNumericLiteral)
    .map(({ type, value: text }) => {
      if (type === 'minusSign') return text.replace('-', '\u2212')
      return marks && (type === 'decimal' || type === 'group') ? marks[type] : text
    })
    .join('')
}

/** The marks of a locale's plain numbers. Some locales' data have other ones for money, which would make 1,5 kg cost 1.50. */
function marksOf(locale: string): { decimal: string; group: string } {
  const parts = numberFormOf(locale, { minimumFractionDigits: 1 }).formatToParts(12_345_678)
  const mark = (type: 'decimal' | 'group') => parts.find((part) => part.type === type)?.value ?? ''
  return { decimal: mark('decimal'), group: mark('group') }
}
