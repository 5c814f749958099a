import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { nameKey } from './name-key'
import type { AdditiveClass, Allergen, AllergenStatement } from './types'

export type LabelLine = { name: string; massG: number; isAddedWater?: boolean; additiveClass?: AdditiveClass }
export type LabelPart = { of: string; name: string; sharePct: number; additiveClass?: AdditiveClass }

export type LabelIngredient = {
  name: string
  massG: number
  isAddedWater: boolean
  additiveClass: AdditiveClass | null
  parts: LabelPart[]
}

export type ReadIngredients = {
  ingredients: LabelIngredient[]
  weighedG: number
  /** By key of the name; nothing in `present` where 'none' was said. */
  allergensOf: Map<string, { of: string; present: Allergen[] }>
  /** What nobody has said an allergen or 'none' of. */
  withoutStatement: string[]
  /** Every compound's parts come to 99.5 to 100 %. */
  partsAddUp: boolean
}

const LEAST_PARTS_PCT = 99.5
const MOST_PARTS_PCT = 100 + 1e-9

/**
 * Reads lines, parts and allergens into ingredients: lines of one name added up, each part at its compound.
 * @throws CalcError as ingredientList
 * Source: Regulation (EU) No 1169/2011, Annex VII, Part E (compound ingredients).
 */
export function readIngredients(q: {
  lines: readonly LabelLine[]
  parts: readonly LabelPart[]
  allergens: readonly { of: string; allergen: AllergenStatement }[]
}): ReadIngredients {
  mustHaveAtLeast('lines', q.lines, 1)
  const byName = new Map<string, LabelIngredient>()
  let weighedG = 0
  q.lines.forEach((line, i) => {
    mustBeNamed(`lines[${i}].name`, line.name)
    weighedG += mustBeWithin(`lines[${i}].massG`, line.massG, { over: 0 })
    const read = { isAddedWater: line.isAddedWater ?? false, additiveClass: line.additiveClass ?? null }
    const key = nameKey(line.name)
    const held = byName.get(key)
    if (held === undefined) byName.set(key, { name: line.name.trim(), massG: line.massG, ...read, parts: [] })
    else if (held.isAddedWater !== read.isAddedWater || held.additiveClass !== read.additiveClass) {
      throw new CalcError('not-possible', { field: `lines[${i}].name`, value: line.name, reason: 'lines-disagree' })
    } else held.massG += line.massG
  })
  const seen = new Set<string>()
  q.parts.forEach((part, i) => {
    mustBeNamed(`parts[${i}].name`, part.name)
    mustBeWithin(`parts[${i}].sharePct`, part.sharePct, { over: 0, max: 100 })
    const compound = byName.get(nameKey(part.of))
    if (compound === undefined) throw unknownName(`parts[${i}].of`, part.of)
    const key = `${nameKey(part.of)}\n${nameKey(part.name)}`
    if (seen.has(key)) {
      throw new CalcError('duplicate', { field: `parts[${i}].name`, value: part.name })
    }
    seen.add(key)
    compound.parts.push(part)
  })
  const allergensOf = readAllergens(q, byName)
  const withoutStatement = withoutStatementIn(byName, allergensOf)
  return { ingredients: [...byName.values()], weighedG, allergensOf, withoutStatement, partsAddUp: doPartsAddUp(byName) }
}

function readAllergens(q: Parameters<typeof readIngredients>[0], byName: ReadonlyMap<string, LabelIngredient>) {
  const names = new Map<string, string>()
  for (const { name } of [...byName.values(), ...q.parts]) if (!names.has(nameKey(name))) names.set(nameKey(name), name)
  const allergensOf: ReadIngredients['allergensOf'] = new Map()
  q.allergens.forEach(({ of, allergen }, i) => {
    const key = nameKey(of)
    const name = names.get(key)
    if (name === undefined) throw unknownName(`allergens[${i}].of`, of)
    const held = allergensOf.get(key)
    const isNone = allergen === 'none'
    if (held !== undefined && isNone !== (held.present.length === 0)) {
      throw new CalcError('not-possible', { field: `allergens[${i}].allergen`, value: of, reason: 'lines-disagree' })
    }
    allergensOf.set(key, { of: name, present: [...(held?.present ?? []), ...(isNone ? [] : [allergen])] })
  })
  return allergensOf
}

/** A mix is spoken for by itself, or by every one of its parts. */
function withoutStatementIn(byName: ReadonlyMap<string, LabelIngredient>, allergensOf: ReadIngredients['allergensOf']) {
  const isSaid = (name: string) => allergensOf.has(nameKey(name))
  const open = [...byName.values()].flatMap((one) => {
    if (isSaid(one.name)) return []
    return one.parts.length === 0 ? [one.name] : one.parts.map(({ name }) => name).filter((name) => !isSaid(name))
  })
  return [...new Map(open.map((name) => [nameKey(name), name])).values()]
}

function doPartsAddUp(byName: ReadonlyMap<string, LabelIngredient>): boolean {
  return [...byName.values()].every(({ name, parts }) => {
    const sumPct = parts.reduce((sum, { sharePct }) => sum + sharePct, 0)
    if (sumPct > MOST_PARTS_PCT) {
      throw new CalcError('not-possible', { field: 'parts', value: name, max: 100, reason: 'parts-over-100' })
    }
    return parts.length === 0 || sumPct >= LEAST_PARTS_PCT
  })
}

function mustBeNamed(field: string, name: string): void {
  if (name.trim() === '') throw new CalcError('empty', { field })
}

function unknownName(field: string, value: string): CalcError {
  return new CalcError('not-possible', { field, value, reason: 'unknown-ingredient' })
}
