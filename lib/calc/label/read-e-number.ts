import { CalcError } from '../error'
import type { AdditiveClass } from './types'

const E_NUMBER = /^E ?(\d{3,4})([a-z]?)( ?\((?:i|ii|iii|iv|v|vi|vii)\))?$/i

/**
 * An E number as the label has it: 'E 300', 'E 150d', 'E 322 (i)'. It never stands without the class of the additive.
 * @param field of the question, for the refusal
 * @returns null where none is given
 * @throws CalcError 'wrong-shape' with reason 'no-e-number'; 'not-possible' with reason 'number-without-class'
 * Source: Regulation (EU) No 1169/2011, Annex VII, Part C; the way of writing is common practice, no source.
 * @example readENumber({ eNumber: 'e300', additiveClass: 'flour-treatment-agent' }, 'eNumber') // 'E 300'
 */
export function readENumber(q: { eNumber?: string; additiveClass?: AdditiveClass }, field: string): string | null {
  const typed = q.eNumber?.trim() ?? ''
  if (typed === '') return null
  const [, number, letter = '', kind = ''] = E_NUMBER.exec(typed) ?? []
  if (number === undefined) throw new CalcError('wrong-shape', { field, value: typed, reason: 'no-e-number' })
  if (q.additiveClass === undefined)
    throw new CalcError('not-possible', { field, value: typed, reason: 'number-without-class' })
  return `E ${number}${letter.toLowerCase()}${kind === '' ? '' : ` ${kind.trim().toLowerCase()}`}`
}
