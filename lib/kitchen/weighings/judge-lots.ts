import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import { readEnteredValue } from '../readings/read-entered-value'
import { Refusal } from '../refusal'
import { areAllergensSaid } from '../stores/rules'
import type { WeighingEntry } from './log-weighing.input'
import { massEntered } from './mass-entered'
import type { LotFacts } from './weighing-facts'

/** What of a weighing came from one lot, as it stands in the book; no mass where one lot gave all of it. */
export type WeighedLot = { lotId: string; massG: number | null; massEntered: string | null }

/**
 * Judges the lots that an entry names, by the entry and the stores alone. Several lots make exactly what the scale showed,
 * each with its own weight. One past its best-before day is taken: what went in went in, and the page says so.
 * @param ingredientId of the line, in lower case
 * @returns none where the entry names none
 * @throws Refusal at `lots…` with lot-where-left-out, lot-not-there, lot-of-other-ingredient, lot-allergens-unknown,
 * there-twice, lots-want-weights, lots-not-the-sum, and what is wrong with a mass
 */
export function judgeLots(
  entry: WeighingEntry,
  ingredientId: string,
  lots: ReadonlyMap<string, LotFacts>,
): WeighedLot[] {
  const named = entry.lots ?? []
  if (named.length > 0 && entry.how === 'left_out') throw Refusal.at('lots.0.lotId', 'lot-where-left-out')
  if (named.length > 1 && entry.how !== 'weighed') throw Refusal.at('lots.1.lotId', 'lots-want-weights')
  const seen = new Set<string>()
  const judged = named.map(({ lotId, mass }, at): WeighedLot => {
    const id = lotId.toLowerCase()
    if (seen.has(id)) throw Refusal.at(`lots.${at}.lotId`, 'there-twice')
    seen.add(id)
    mustBeUsable(lots.get(id), ingredientId, `lots.${at}.lotId`)
    const at1 = `lots.${at}.mass`
    if (mass === null || mass === undefined) {
      if (named.length > 1) throw Refusal.at(at1, 'missing')
      return { lotId: id, massG: null, massEntered: null }
    }
    if (entry.how !== 'weighed') throw Refusal.at(at1, 'mass-only-where-weighed')
    const massG = massEntered(mass, entry.unit ?? '', at1)
    if (massG === 0) throw Refusal.at(at1, 'not-above', { min: 0 })
    return { lotId: id, massG, massEntered: mass }
  })
  mustMakeTheWhole(entry, judged)
  return judged
}

function mustBeUsable(lot: LotFacts | undefined, ingredientId: string, path: string): void {
  if (!lot) throw Refusal.at(path, 'lot-not-there')
  if (lot.ingredientId !== ingredientId)
    throw Refusal.at(path, 'lot-of-other-ingredient', { code: lot.code, ingredient: lot.ingredient.name })
  if (!areAllergensSaid(lot.ingredient))
    throw Refusal.at(path, 'lot-allergens-unknown', { ingredient: lot.ingredient.name })
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
