import 'server-only'

/** Those amendments that a second person said yes to, in the order in which that was said. */
export function inOrderOfAcceptance<Amendment extends { id: string }>(
  all: readonly Amendment[],
  verdictOf: (amendment: Amendment) => { isAccepted: boolean; at: Date } | null,
): Amendment[] {
  const at = (amendment: Amendment) => verdictOf(amendment)?.at.getTime() ?? 0
  return all
    .filter((amendment) => verdictOf(amendment)?.isAccepted)
    .sort((a, b) => at(a) - at(b) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0))
}
