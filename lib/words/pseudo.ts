import { isForms } from './is-forms'
import type { WordsOf } from './same-places'

const letters: Record<string, string> = {
  a: 'á',
  e: 'é',
  i: 'í',
  o: 'ó',
  u: 'ú',
  y: 'ý',
  c: 'ç',
  n: 'ñ',
  s: 'š',
  z: 'ž',
  A: 'Á',
  E: 'É',
  I: 'Í',
  O: 'Ó',
  U: 'Ú',
  C: 'Ç',
  N: 'Ñ',
  S: 'Š',
}
const place = /\{\w+\}/g

/**
 * The pseudo-language: the same texts with accents, a third longer, between brackets, and of another grammar. Places
 * stand first, the last one foremost, and what is said of them comes after; there is no form for one, but one for few.
 * A page in it shows every text that does not come from the words files, what a longer language does to it, and a
 * sentence that was put together of pieces.
 */
export function pseudoOf<Tree>(tree: Tree): WordsOf<Tree> {
  return pseudo(tree) as WordsOf<Tree>
}

function pseudo(tree: unknown): unknown {
  if (typeof tree === 'string') return pseudoText(tree)
  if (typeof tree !== 'object' || tree === null) return tree
  if (isForms(tree)) return { few: pseudoText(tree.other), other: pseudoText(tree.other) }
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key, pseudo(value)]))
}

function pseudoText(text: string): string {
  const places = (text.match(place) ?? []).reverse()
  const said = text
    .replace(place, '')
    .replace(/[A-Za-z]/g, (letter) => letters[letter] ?? letter)
    .trim()
  return `⟦${[...places, `${said}${'·'.repeat(Math.ceil(text.length / 3))}`].join(' ')}⟧`
}
