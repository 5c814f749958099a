import 'server-only'

/**
 * The number in what was typed, as plain decimal text. A keypad offers the mark of the tablet's own language, so point
 * and comma are both read, but a comma before exactly three digits may part thousands as well: that is asked back and
 * not guessed, because the two readings are a thousand apart.
 * @example readEnteredValue(' 24,5 ') // { number: '24.5' }
 */
export function readEnteredValue(typed: string): { number: string } | { fault: 'not-a-number' | 'ambiguous-number' } {
  const match = /^([-\u2212]?)(\d{1,9})(?:([.,])(\d{1,9}))?$/.exec(typed.trim())
  if (!match) return { fault: 'not-a-number' }
  const [, sign = '', whole = '', mark, part] = match
  if (mark === ',' && part?.length === 3) return { fault: 'ambiguous-number' }
  return { number: `${sign ? '-' : ''}${whole}${part === undefined ? '' : `.${part}`}` }
}
