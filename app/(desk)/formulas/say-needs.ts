import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Needs = Words['formulas']['sign']['needs']

/** Whose signatures: 'the owner and the head baker'. Never more than two. */
export function sayNeeds(needs: readonly (keyof Needs)[], text: Words['formulas'], language: Language): string {
  const [first = '', second] = needs.map((need) => text.sign.needs[need])
  return second === undefined ? first : say(text.sign.needsBoth, language, { first, second })
}
