type Entered = { id: string; isDone: boolean; supersedesId: string | null }

/**
 * The steps that stand of those that were entered: what nothing takes the place of, without what had not been done. Of
 * two that take the place of one both stand, because nobody's is overwritten.
 */
export function standingSteps<Step extends Entered>(entered: readonly Step[]): Step[] {
  const replaced = new Set(entered.map(({ supersedesId }) => supersedesId))
  return entered.filter(({ id, isDone }) => isDone && !replaced.has(id))
}
