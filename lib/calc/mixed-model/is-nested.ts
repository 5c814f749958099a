/**
 * Whether each level of one factor lies in one level of another: batches within days.
 * @param fine levels of the one, of each row; @param coarse levels of the other, of the same rows
 * Source: the definition.
 * @example isNested(['1', '1', '2'], ['Monday', 'Monday', 'Friday']) // true
 */
export function isNested(fine: readonly string[], coarse: readonly string[]): boolean {
  const home = new Map<string, string>()
  return fine.every((level, i) => {
    const known = home.get(level) ?? coarse[i]!
    home.set(level, known)
    return known === coarse[i]
  })
}
