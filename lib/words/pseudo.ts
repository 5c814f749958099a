const letters: Record<string, string> = {
  a: 'á', e: 'é', i: 'í', o: 'ó', u: 'ú', y: 'ý', c: 'ç', n: 'ñ', s: 'š', z: 'ž', A: 'Á', E: 'É', I: 'Í', O: 'Ó', U: 'Ú', C: 'Ç', N: 'Ñ', S: 'Š',
}

/**
 * The pseudo-language: the same texts with accents, a third longer, between brackets; places are left alone.
 * A page in it shows every text that does not come from the words files, and what a longer language does to it.
 */
export function pseudoOf<T>(tree: T): T {
  if (typeof tree === 'string') return pseudoText(tree) as T
  if (typeof tree !== 'object' || tree === null) return tree
  return Object.fromEntries(Object.entries(tree).map(([key, value]) => [key, pseudoOf(value)])) as T
}

function pseudoText(text: string): string {
  const accented = text.replace(/\{\w+\}|[A-Za-z]/g, (part) => letters[part] ?? part)
  return `⟦${accented}${'·'.repeat(Math.ceil(text.length / 3))}⟧`
}
