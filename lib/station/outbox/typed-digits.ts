const mostDigits = 9

/** What a number becomes by a key: a digit, the decimal mark as '.', 'sign' or 'delete'. What cannot follow changes nothing. */
export function typedWith(text: string, key: string): string {
  if (key === 'delete') return text.slice(0, -1)
  if (key === 'sign') return text.startsWith('-') ? text.slice(1) : `-${text}`
  if (text.startsWith('-')) return `-${typedWith(text.slice(1), key)}`
  if (key === '.') return text.includes('.') ? text : `${text || '0'}.`
  const [whole = '', part] = text.split('.')
  if ((part ?? whole).length >= mostDigits) return text
  return text === '0' ? key : `${text}${key}`
}

/** What was typed as a number that can be kept; null while it is none. */
export function readTyped(text: string): string | null {
  const trimmed = text.endsWith('.') ? text.slice(0, -1) : text
  if (!/^-?\d{1,9}(\.\d{1,9})?$/.test(trimmed)) return null
  // Nobody reads less than nothing.
  return Number(trimmed) === 0 ? trimmed.replace('-', '') : trimmed
}
