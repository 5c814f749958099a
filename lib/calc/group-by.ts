/**
 * A list by a name of its members, names in order of first appearance, members in theirs.
 * Source: definition.
 * @example groupBy([1, 2, 3], (n) => (n % 2 ? 'odd' : 'even')) // Map { 'odd' → [1, 3], 'even' → [2] }
 */
export function groupBy<T>(list: readonly T[], key: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>()
  for (const item of list) {
    const name = key(item)
    const group = groups.get(name)
    if (group) group.push(item)
    else groups.set(name, [item])
  }
  return groups
}
