import { standardMeasure } from './standard-measure'
import type { Words } from './words'

/** How a measure is read: in the reader's language, or as the bakery wrote it for its own. */
export function measureMethod(
  { code, method }: { code: string | null; method: string },
  words: Pick<Words, 'measures'>,
): string {
  return standardMeasure(code, words)?.method ?? method
}
