import 'server-only'
import { levelOf } from '../../auth/rights'
import type { Role } from '../../db/generated/enums'

/** Somebody who is there. */
export type PersonThere = { id: string; role: Role }

/** As what somebody says yes or no to an amendment. */
export type DecidesAs = 'second_person' | 'witness' | 'alone'

const mayDecide = (role: Role) => levelOf({ kind: 'desk', role }, 'decide-amendment') === 'yes'

/**
 * As what somebody may say yes or no to an amendment, or why they may not. Owner or head baker who did not propose it;
 * where only its proposer is one of these, any second baker as a witness; who is the only person there is, alone.
 * @param people everybody of the bakery who is there, the person among them
 */
export function decidesAs(q: {
  person: PersonThere
  proposedById: string
  people: readonly PersonThere[]
}): { as: DecidesAs } | { bar: 'own-amendment' | 'not-allowed' } {
  const { person, proposedById, people } = q
  if (person.id === proposedById) return people.length === 1 ? { as: 'alone' } : { bar: 'own-amendment' }
  if (mayDecide(person.role)) return { as: 'second_person' }
  const hasSecond = people.some(({ id, role }) => id !== proposedById && mayDecide(role))
  return hasSecond ? { bar: 'not-allowed' } : { as: 'witness' }
}

/** As what somebody signs that the first result rested on a slip. */
export type SlipSigns = 'owner' | 'head_baker' | 'witness' | 'alone'

/** Which signatures it takes: owner and head baker; the owner and any second baker where one person is both; or alone. */
export function slipNeeds(people: readonly PersonThere[]): SlipSigns[] {
  if (people.length === 1) return ['alone']
  return people.some(({ role }) => role === 'head_baker') ? ['owner', 'head_baker'] : ['owner', 'witness']
}

/**
 * As what somebody may sign now that the first result rested on a slip, and whether that is the last signature; or why
 * they may not. Nobody signs twice.
 * @param people everybody of the bakery who is there, the person among them
 * @param given signatures under the same amendments, none of them the last
 */
export function slipSignsAs(q: {
  person: PersonThere
  people: readonly PersonThere[]
  given: readonly { personId: string; as: SlipSigns }[]
}): { as: SlipSigns; isLast: boolean } | { bar: 'slip-signed-by-you' | 'not-allowed' } {
  const { person, given } = q
  if (given.some(({ personId }) => personId === person.id)) return { bar: 'slip-signed-by-you' }
  const missing = slipNeeds(q.people).filter((need) => !given.some(({ as }) => as === need))
  const as = missing.find((need) => need === person.role || need === 'witness' || need === 'alone')
  return as === undefined ? { bar: 'not-allowed' } : { as, isLast: missing.length === 1 }
}
