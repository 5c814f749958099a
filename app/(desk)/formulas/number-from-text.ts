/**
 * A number as it was typed, in the bakery's locale: only its own decimal mark, no mark for thousands, as in every form.
 * @returns undefined for nothing typed; the text itself when it is no number, for the command to refuse at the field
 */
export function numberFromText(text: string, locale: string): number | string | undefined {
  const typed = text.trim()
  if (typed === '') return undefined
  const mark = new Intl.NumberFormat(locale).formatToParts(1.5).find((part) => part.type === 'decimal')?.value ?? '.'
  const parts = typed.replace('\u2212', '-').split(mark)
  const [whole = '', rest] = parts
  if (parts.length > 2 || !/^-?\d*$/.test(whole) || !/^\d*$/.test(rest ?? '') || !/\d/.test(`${whole}${rest ?? ''}`)) return typed
  return Number(`${whole}.${rest ?? ''}0`)
}
