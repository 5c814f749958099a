import { sayName } from './say'
import { standardMeasure, type NamedMeasure } from './standard-measure'
import type { Words } from './words'

/** A measure's name within a sentence: in the form that the language has for that, or quoted as the bakery wrote it. */
export function measureInText({ code, name }: NamedMeasure, words: Pick<Words, 'measures'>, language: string): string {
  return standardMeasure(code, words)?.inText ?? sayName(words.measures.ownInText, language, { name })
}
