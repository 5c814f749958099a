import 'server-only'

/**
 * What stood of a line before a moment: of entries each of which takes the place of one before it, those that had come in
 * by then and that none which had come in by then took the place of. All times are receipts, by our own clock; at the
 * same moment an entry is not before.
 * @param moment null for what stands at the end
 */
export function stoodBefore<Entry extends { id: string; supersedes: string | null; receivedAt: Date }>(
  entries: readonly Entry[],
  moment: Date | null,
): Entry[] {
  const there = entries.filter(({ receivedAt }) => moment === null || receivedAt < moment)
  const replaced = new Set(there.map(({ supersedes }) => supersedes))
  return there.filter(({ id }) => !replaced.has(id))
}
