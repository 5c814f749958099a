import { numberFormOf } from './kept-forms'

/**
 * A number in the marks of a form's locale, money in the same as other numbers, with a real minus (U+2212) where the form writes a hyphen.
 * @param value a number, or decimal text, which is written exactly
 * Source: ECMA-402; minus sign: SI Brochure, 9th ed., 5.4.2 and Unicode U+2212.
 */
export function writeNumber(form: Intl.NumberFormat, value: number | string): string {
  const marks = marksOf(form)
  // Taking a number apart takes ten times as long as writing it, and most have nothing to put otherwise.
  const whole = form.format(value as Intl.StringNumericLiteral)
  if (marks === null && !whole.includes('-')) return whole
  return form
    .formatToParts(value as Intl.StringNumericLiteral)
    .map(({ type, value: text }) => {
      if (type === 'minusSign') return text.replace('-', '\u2212')
      return marks && (type === 'decimal' || type === 'group') ? marks[type] : text
    })
    .join('')
}

type Marks = { decimal: string; group: string }

/** Marks of the forms in use: asking a form for its options takes longer than writing a number with it. */
const known = new WeakMap<Intl.NumberFormat, Marks | null>()

/** The marks of a locale's plain numbers for money, of which some locales' data have other ones: that would make 1,5 kg cost 1.50. Null for all else. */
function marksOf(form: Intl.NumberFormat): Marks | null {
  const held = known.get(form)
  if (held !== undefined) return held
  const { locale, style } = form.resolvedOptions()
  const marks = style === 'currency' ? plainMarks(locale) : null
  known.set(form, marks)
  return marks
}

function plainMarks(locale: string): Marks {
  const parts = numberFormOf(locale, { minimumFractionDigits: 1 }).formatToParts(12_345_678)
  const mark = (type: 'decimal' | 'group') => parts.find((part) => part.type === type)?.value ?? ''
  return { decimal: mark('decimal'), group: mark('group') }
}
