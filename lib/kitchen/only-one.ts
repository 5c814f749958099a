import 'server-only'

/** The one of a list that has only one; null when it has none, or several. */
export function onlyOne<Each>(list: readonly Each[]): Each | null {
  const [first, ...others] = list
  return first !== undefined && others.length === 0 ? first : null
}
