import 'server-only'

/**
 * As what somebody signs a cause that was found later, or why they may not: another person than who found it, and who is
 * the only person there, alone.
 * @param people ids of everybody of the bakery who is there, the person among them
 */
export function signsFoundCause(q: {
  personId: string
  foundById: string
  people: readonly string[]
}): { as: 'second_person' | 'alone' } | { bar: 'own-found-cause' } {
  if (q.personId !== q.foundById) return { as: 'second_person' }
  return q.people.length === 1 ? { as: 'alone' } : { bar: 'own-found-cause' }
}
