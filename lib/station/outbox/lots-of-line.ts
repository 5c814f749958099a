import { codeAsKept, lotOfOther } from '../../kitchen/stores/code-on-label.input'
import type { MassUnit } from '../../words/format/mass'
import type { LotFrom, LotOffered, WeighLine } from '../keep/weigh-facts'
import type { EntryOf, OutboxEntry } from './entry'
import { holds } from './holds'
import { plainMass } from './plain-mass'
import { sumOfMasses } from './sum-of-masses'

export type GivenLot = LotOffered & { mass: string }

/** From which lots a line is weighed: those that have given what they do, and the one that is on the scale now. */
export type LotsChosen = { given: GivenLot[]; now: LotOffered | null }

export const noLots: LotsChosen = { given: [], now: null }

type LotsSent = EntryOf<'weighing'>['payload']['lots']

/** A lot that is said by its code alone: nobody has written it down, as far as this tablet knows. */
export function typedLot(code: string): LotOffered {
  return { id: typedId(code), code, isPast: false, isToConfirm: true, isTyped: true }
}

/** Capitals do not make another lot. */
function typedId(code: string): string {
  return `code ${code.toLowerCase()}`
}

/** By what a lot that was sent is told from the others of its line. */
export function idOfSent({ lotId, code }: NonNullable<LotsSent>[number]): string {
  return lotId ?? typedId(code ?? '')
}

/** What is sent of the lots: of a single one nothing, of several what each gave. @param typed what the last one gave */
export function lotsToSend({ given, now }: LotsChosen, typed: string | null): NonNullable<LotsSent> | null {
  const [first] = given
  if (!first) return now && [sentAs(now)]
  const gave = given.map((lot) => ({ ...sentAs(lot), mass: lot.mass }))
  if (!now || typed === null) return given.length === 1 ? [sentAs(first)] : gave
  return [...gave, { ...sentAs(now), mass: typed }]
}

function sentAs({ id, code, isTyped }: LotOffered): { lotId: string } | { code: string } {
  return isTyped ? { code } : { lotId: id }
}

/** The lots that are sent, as they are shown. */
export function lotsShown({ given, now }: LotsChosen, sent: LotsSent): ShownLot[] {
  const chosen = [...given, ...(now ? [now] : [])]
  return (sent ?? []).flatMap((each) =>
    chosen.flatMap(({ id, code, isPast, isToConfirm }) =>
      id === idOfSent(each) ? [{ code, isPast, ...(isToConfirm ? { isToConfirm } : {}) }] : [],
    ),
  )
}

type ShownLot = { code: string; isPast: boolean; isToConfirm?: boolean }

/** All of a line that is on the scales: what its lots gave and what is typed; null for nothing. */
export function massOfLots({ given }: LotsChosen, typed: string | null): string | null {
  const masses = [...given.map(({ mass }) => mass), ...(typed === null ? [] : [typed])]
  return masses.length === 0 ? null : sumOfMasses(masses)
}

/** What is on the scale is of its lot, and the rest comes from another one. */
export function withAnother({ given, now }: LotsChosen, typed: string): LotsChosen {
  return now ? { given: [...given, { ...now, mass: typed }], now: null } : { given, now }
}

/** Without one of the lots that had given their part. */
export function withoutLot({ given, now }: LotsChosen, id: string): LotsChosen {
  return { given: given.filter((each) => each.id !== id), now }
}

/**
 * The lots that what stands was taken from, to be carried over by what takes its place: what each gave stays but for the
 * last one, of which the scale is read again.
 */
export function lotsOfStanding(lots: readonly LotFrom[], unit: MassUnit): LotsChosen {
  const known = lots.map(({ massG: _, sameAs: __, ...lot }): LotOffered => lot)
  const given = lots.slice(0, -1).map(({ massG }, at): GivenLot => {
    const lot = known[at]
    if (!lot) throw new Error('a lot is there for each of its masses')
    return { ...lot, mass: plainMass(massG ?? 0, unit) }
  })
  return { given, now: known.at(-1) ?? null }
}

/** What was chosen, out of what a draft keeps; null for a draft that says nothing. */
export function readLots(draft: string): LotsChosen | null {
  return draft === '' ? null : (JSON.parse(draft) as LotsChosen)
}

/**
 * The lot that an ingredient was taken from last on this tablet, where it is still offered or was said here by its code;
 * it is offered first.
 * @param known entries of doughs that whoever is there knows: of others not even that something was taken is told
 */
export function lastLot(
  { ingredientId, lots }: Pick<WeighLine, 'ingredientId' | 'lots'>,
  known: readonly OutboxEntry[],
): LotOffered | null {
  const of = known
    .filter((entry) => entry.kind === 'weighing')
    .filter((entry) => entry.payload.ingredientId === ingredientId && holds(entry))
    .sort((a, b) => b.counter - a.counter)
    .find(({ payload }) => (payload.lots?.length ?? 0) > 0)
  const last = of?.payload.lots?.at(-1)
  if (!last) return null
  const { lotId, code } = last
  if (lotId) return lots.find((lot) => lot.id === lotId) ?? null
  // Once the book has it, it is one of those that are offered.
  return code ? (lotOf(code, lots) ?? typedLot(code)) : null
}

export type LotFound = { found: 'lot'; lot: LotOffered } | { found: 'other'; name: string } | { found: 'none' }

/**
 * The lot of a code as it was typed or scanned: of the line, or of another ingredient, which is told. Capitals and blanks
 * at the ends do not matter where only one is meant. A label that names another ingredient's article is that one's.
 */
export function findLot(
  typed: string,
  line: Pick<WeighLine, 'ingredientId' | 'lots'>,
  lines: readonly Pick<WeighLine, 'ingredientId' | 'name' | 'lots'>[],
): LotFound {
  const lot = lotOf(typed, line.lots)
  if (lot) return { found: 'lot', lot }
  const known = [{ ...line, name: '' }, ...lines].flatMap(({ ingredientId, name, lots }) =>
    lots.map(({ code }) => ({ code, ingredientId, name })),
  )
  const other = lotOfOther(typed, line.ingredientId, known)
  return other ? { found: 'other', name: other.name } : { found: 'none' }
}

function lotOf(typed: string, lots: readonly LotOffered[]): LotOffered | null {
  const code = codeAsKept(typed)
  const same = lots.find((lot) => lot.code === code)
  if (same) return same
  const alike = lots.filter((lot) => lot.code.toLowerCase() === code.toLowerCase())
  return alike.length === 1 ? (alike[0] ?? null) : null
}
