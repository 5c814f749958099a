import { standardMeasure, type NamedMeasure } from './standard-measure'
import type { Words } from './words'

/** A measure's name as a heading or in a list: in the reader's language, or as the bakery named its own. */
export function measureName({ code, name }: NamedMeasure, words: Pick<Words, 'measures'>): string {
  return standardMeasure(code, words)?.name ?? name
}
