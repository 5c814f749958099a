import 'server-only'
import { isDeepStrictEqual } from 'node:util'
import type { TrialContent } from './trial-content.input'

/**
 * Whether two contents of a draft ask for the same work: doughs, doses, sizes, conditions and what decides. How the
 * question, the note and the names are worded is left out, so that mending a word makes nobody an author.
 */
export function isSameWork(a: TrialContent, b: TrialContent): boolean {
  return isDeepStrictEqual(workOf(a), workOf(b))
}

function workOf({ question: _question, note: _note, arms, factor, heldTotals, ...work }: TrialContent) {
  return {
    ...work,
    heldTotals: [...heldTotals].sort(),
    arms: arms.map(({ name: _name, ...arm }) => arm),
    factorLevels: factor?.levels ?? [],
  }
}
