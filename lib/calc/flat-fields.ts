import { CalcError } from './error'

/**
 * Runs a calculation whose question was put together from a flat one, so that what it refuses names the flat field:
 * with the prefix 'design.' a fault at 'design.blocks' becomes one at 'blocks'.
 * @param named prefixes to leave out, or the flat name of a field
 */
export function atFlatFields<Answer>(named: readonly string[] | ((field: string) => string), run: () => Answer): Answer {
  try {
    return run()
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    const { field } = error.facts
    const flat = typeof named === 'function' ? named(field) : field.slice(named.find((prefix) => field.startsWith(prefix))?.length ?? 0)
    throw new CalcError(error.code, { ...error.facts, field: flat })
  }
}
