/**
 * A number in a form's own marks, with a real minus (U+2212) where the form writes a hyphen.
 * @param value a number, or decimal text, which is written exactly
 * Source: ECMA-402; minus sign: SI Brochure, 9th ed., 5.4.2 and Unicode U+2212.
 */
export function writeNumber(form: Intl.NumberFormat, value: number | string): string {
  return form
    .formatToParts(value as Intl.StringNumericLiteral)
    .map((part) => (part.type === 'minusSign' ? part.value.replace('-', '\u2212') : part.value))
    .join('')
}
