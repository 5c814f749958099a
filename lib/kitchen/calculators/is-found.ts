import 'server-only'

/**
 * Whether a calculation has to do with what somebody looks for: every word of it stands somewhere in the texts,
 * also inside a longer word. Nothing to look for finds everything.
 */
export function isFound(texts: readonly string[], find: string): boolean {
  const all = texts.join(' ').toLowerCase()
  return find
    .toLowerCase()
    .split(/\s+/)
    .every((word) => all.includes(word))
}
