import 'server-only'

const minus = /^[-\u2212]/

/**
 * A number typed in a form, as plain decimal text: '1234.5'. Only the locale's own decimal mark is read; a mark for
 * thousands is not, because a comma that means one thing to one baker means another to the next.
 * @returns undefined for an empty field; what was typed, when it is no number, for the command to refuse at the field
 */
export function decimalTextOf(form: FormData, name: string, locale: string): string | undefined {
  const value = form.get(name)
  const typed = typeof value === 'string' ? value.trim() : ''
  if (typed === '') return undefined
  const mark = new Intl.NumberFormat(locale).formatToParts(1.5).find((part) => part.type === 'decimal')?.value ?? '.'
  const [whole = '', part, ...rest] = typed.replace(minus, '').split(mark)
  const isNumber = rest.length === 0 && /^\d*$/.test(whole) && (part === undefined ? whole !== '' : /^\d+$/.test(part))
  if (!isNumber) return typed
  return `${minus.test(typed) ? '-' : ''}${whole || '0'}${part === undefined ? '' : `.${part}`}`
}
