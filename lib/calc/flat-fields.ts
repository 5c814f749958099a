import { CalcError } from './error'

type Naming = readonly string[] | ((field: string) => string) | Readonly<Record<string, string>>

/**
 * Runs a calculation whose question was put together from a flat one, so that what it refuses names the flat field:
 * with the prefix 'design.' a fault at 'design.blocks' becomes one at 'blocks'.
 * @param named prefixes to leave out; or the flat name of a field; or flat names by the first word of what is refused
 */
export function atFlatFields<Answer>(named: Naming, run: () => Answer): Answer {
  try {
    return run()
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    const { field } = error.facts
    throw new CalcError(error.code, { ...error.facts, field: flatName(named, field) })
  }
}

function flatName(named: Naming, field: string): string {
  if (typeof named === 'function') return named(field)
  if (isPrefixes(named)) return field.slice(named.find((prefix) => field.startsWith(prefix))?.length ?? 0)
  const word = /^\w+/.exec(field)?.[0] ?? ''
  return Object.hasOwn(named, word) ? named[word]! : field
}

function isPrefixes(named: Naming): named is readonly string[] {
  return Array.isArray(named)
}
