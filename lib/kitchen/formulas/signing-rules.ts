import 'server-only'
import type { Role } from '../../db/generated/enums'

/** `second-person`: anybody who may sign off and did not draft it. */
export type NeededSignature = 'second-person' | 'owner' | 'head_baker'

/** What a change touches that one second person alone may not sign for. */
export type GraveChange = 'allergens' | 'cost' | 'both'

/**
 * What a version changes against what is in production or coming that the owner must know of; null for neither.
 * @param changesAllergens, changesCost false also when nothing is in production or coming
 */
export function graveChange(q: { changesAllergens: boolean; changesCost: boolean }): GraveChange | null {
  if (q.changesAllergens) return q.changesCost ? 'both' : 'allergens'
  return q.changesCost ? 'cost' : null
}

/**
 * Which signatures a version needs. A first version, and a change that leaves allergens and cost alone, need one
 * second person; any other needs the owner and the head baker. A bakery without a head baker cannot be asked for
 * their signature, so there the owner's is enough.
 * @param isBegun whether somebody signed already as one of two: a price that moves meanwhile does not undo that
 */
export function signaturesNeeded(q: {
  grave: GraveChange | null
  hasHeadBaker: boolean
  isBegun: boolean
}): NeededSignature[] {
  if (q.grave || q.isBegun) return q.hasHeadBaker ? ['owner', 'head_baker'] : ['owner']
  return ['second-person']
}

/** The signatures that are not there yet. One person signs once, as what they are. */
export function signaturesMissing(
  needed: readonly NeededSignature[],
  given: readonly { role: Role }[],
): NeededSignature[] {
  return needed.filter((need) => !given.some(({ role }) => need === 'second-person' || need === role))
}

export type SigningBar = 'already-signed' | 'own-proposal' | 'not-your-signature'

/**
 * Why somebody may not sign a version now, or null when they may. Who drafted it does not sign it off alone: they
 * may give one of two signatures, and where the bakery says so a person who works alone signs their own.
 */
export function signingBar(q: {
  person: { personId: string; role: Role }
  draftedById: string
  needed: readonly NeededSignature[]
  given: readonly { personId: string; role: Role }[]
  worksAlone: boolean
}): SigningBar | null {
  const { person, needed, given } = q
  if (given.some(({ personId }) => personId === person.personId)) return 'already-signed'
  const fits = signaturesMissing(needed, given).some((need) => need === 'second-person' || need === person.role)
  if (!fits) return 'not-your-signature'
  const isProposer = person.personId === q.draftedById
  return isProposer && needed.length === 1 && !q.worksAlone ? 'own-proposal' : null
}

/** In what words a signature is given: the key of its meaning. */
export type SignatureMeaning =
  | 'second-person'
  | 'proposer-alone'
  | 'proposer-beside'
  | `${GraveChange}-${'owner' | 'head_baker' | 'proposer' | 'proposer-alone'}`

/** The words say what the change touches, so that nobody signs for new allergens or another cost without knowing. */
export function meaningOfSignature(q: {
  needed: readonly NeededSignature[]
  grave: GraveChange | null
  role: Role
  isProposer: boolean
}): SignatureMeaning {
  const { grave } = q
  const isAlone = q.needed.length === 1
  if (!grave) return !q.isProposer ? 'second-person' : isAlone ? 'proposer-alone' : 'proposer-beside'
  if (q.isProposer) return isAlone ? `${grave}-proposer-alone` : `${grave}-proposer`
  return q.role === 'owner' ? `${grave}-owner` : `${grave}-head_baker`
}
