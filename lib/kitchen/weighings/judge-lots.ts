import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import { readEnteredValue } from '../readings/read-entered-value'
import { Refusal } from '../refusal'
import { areAllergensSaid } from '../stores/rules'
import type { WeighingEntry } from './log-weighing.input'
import { massEntered } from './mass-entered'
import { typedCodeKey } from './typed-codes'
import type { WeighingFacts } from './weighing-facts'

/** What of a weighing came from one lot, as it stands in the book; no mass where one lot gave all of it. */
export type WeighedLot = {
  /** Null for one that nobody has written down: it comes into the stores with the weighing, to be confirmed. */
  lotId: string | null
  /** As it was typed; null where the lot was chosen. */
  codeEntered: string | null
  massG: number | null
  massEntered: string | null
}

export type StoresFacts = Pick<WeighingFacts, 'lots' | 'typed'>

/**
 * Judges the lots that an entry names, by the entry and the stores alone. Several lots make exactly what the scale showed,
 * each with its own weight. One past its best-before day is taken: what went in went in, and the page says so.
 * @param ingredientId of the line, in lower case
 * @returns none where the entry names none
 * @throws Refusal at `lots…` with lot-where-left-out, lot-not-there, lot-of-other-ingredient, lot-allergens-unknown,
 * lot-was-ended, lot-was-taken-out, there-twice, lots-want-weights, lots-not-the-sum, and what is wrong with a mass
 */
export function judgeLots(entry: WeighingEntry, ingredientId: string, stores: StoresFacts): WeighedLot[] {
  const named = entry.lots ?? []
  if (named.length > 0 && entry.how === 'left_out') throw Refusal.at('lots.0.lotId', 'lot-where-left-out')
  if (named.length > 1 && entry.how !== 'weighed') throw Refusal.at('lots.1.lotId', 'lots-want-weights')
  const seen = new Set<string>()
  const judged = named.map(({ lotId, code, mass }, at): WeighedLot => {
    const said =
      lotId === null || lotId === undefined
        ? lotOfCode(code ?? '', ingredientId, stores, `lots.${at}.code`)
        : lotOfId(lotId.toLowerCase(), ingredientId, stores, `lots.${at}.lotId`)
    if (seen.has(said.key)) throw Refusal.at(said.path, 'there-twice')
    seen.add(said.key)
    const which = { lotId: said.lotId, codeEntered: said.codeEntered }
    const at1 = `lots.${at}.mass`
    if (mass === null || mass === undefined) {
      if (named.length > 1) throw Refusal.at(at1, 'missing')
      return { ...which, massG: null, massEntered: null }
    }
    if (entry.how !== 'weighed') throw Refusal.at(at1, 'mass-only-where-weighed')
    const massG = massEntered(mass, entry.unit ?? '', at1)
    if (massG === 0) throw Refusal.at(at1, 'not-above', { min: 0 })
    return { ...which, massG, massEntered: mass }
  })
  mustMakeTheWhole(entry, judged)
  return judged
}

type SaidLot = Pick<WeighedLot, 'lotId' | 'codeEntered'> & { key: string; path: string }

function lotOfId(id: string, ingredientId: string, { lots }: StoresFacts, path: string): SaidLot {
  const lot = lots.get(id)
  if (!lot) throw Refusal.at(path, 'lot-not-there')
  if (lot.ingredientId !== ingredientId)
    throw Refusal.at(path, 'lot-of-other-ingredient', { code: lot.code, ingredient: lot.ingredient.name })
  if (!areAllergensSaid(lot.ingredient))
    throw Refusal.at(path, 'lot-allergens-unknown', { ingredient: lot.ingredient.name })
  return { lotId: id, codeEntered: null, key: id, path }
}

/** What is on the bench is what its label says: a lot that is there, or one that nobody has written down yet. */
function lotOfCode(code: string, ingredientId: string, { typed }: StoresFacts, path: string): SaidLot {
  const found = typed.get(typedCodeKey(ingredientId, code))
  if (!found) throw new Error('each code that is named was looked up')
  const { key, ingredient, lot, ended, other } = found
  if (!areAllergensSaid(ingredient)) throw Refusal.at(path, 'lot-allergens-unknown', { ingredient: ingredient.name })
  if (other !== null) throw Refusal.at(path, 'lot-of-other-ingredient', { code, ingredient: other })
  if (ended !== null)
    throw Refusal.at(path, ended === 'taken_out' ? 'lot-was-taken-out' : 'lot-was-ended', {
      code,
      ingredient: ingredient.name,
    })
  return { lotId: lot?.id ?? null, codeEntered: code, key: lot?.id ?? `code ${key}`, path }
}

/** In the unit in which all were typed, so that the sum is exact. */
function mustMakeTheWhole({ mass, unit }: WeighingEntry, lots: readonly WeighedLot[]): void {
  const typed = lots.flatMap(({ massEntered: ofLot }) => (ofLot === null ? [] : [numberOf(ofLot)]))
  if (typed.length === 0) return
  const sum = Decimal.sum(...typed)
  const whole = numberOf(mass ?? '')
  if (!sum.equals(whole))
    throw Refusal.at(`lots.${typed.length - 1}.mass`, 'lots-not-the-sum', {
      sum: sum.toFixed(),
      whole: whole.toFixed(),
      unit: unit ?? '',
    })
}

function numberOf(typed: string): Decimal {
  const read = readEnteredValue(typed)
  if ('fault' in read) throw new Error('a mass was judged to be a number before')
  return new Decimal(read.number)
}
