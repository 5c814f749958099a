import 'server-only'
import { dictionary } from '@zxcvbn-ts/language-common'

const common = new Set(dictionary['passwords-common'])
const fewestCharacters = 5

export type PasswordFault = 'password-common' | 'password-names' | 'password-monotone'

/**
 * Why a password of lawful length is refused all the same, or nothing: it is on the list of common ones, holds a
 * name that anybody would try, or is made of very few characters. The list is local; nothing is asked outside.
 * @param names what a guesser knows: the bakery's, the person's and the product's name, the e-mail address
 */
export function findPasswordFault(password: string, names: readonly string[]): PasswordFault | undefined {
  const lower = password.toLowerCase()
  if (common.has(lower)) return 'password-common'
  if (new Set(lower).size < fewestCharacters) return 'password-monotone'
  const words = names.flatMap((name) => name.toLowerCase().split(/[^\p{L}\p{N}]+/u)).filter((word) => word.length >= 4)
  return words.some((word) => lower.includes(word)) ? 'password-names' : undefined
}
