import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import type { AdditiveClass, Allergen } from './types'

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
  allergensOf: Map<string, Allergen[]>
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
  allergens: readonly { of: string; allergen: Allergen }[]
}): ReadIngredients {
  mustHaveAtLeast('lines', q.lines, 1)
  const byName = new Map<string, LabelIngredient>()
  let weighedG = 0
  q.lines.forEach((line, i) => {
    mustBeNamed(`lines[${i}].name`, line.name)
    weighedG += mustBeWithin(`lines[${i}].massG`, line.massG, { over: 0 })
    const read = { isAddedWater: line.isAddedWater ?? false, additiveClass: line.additiveClass ?? null }
    const held = byName.get(line.name)
    if (held === undefined) byName.set(line.name, { name: line.name, massG: line.massG, ...read, parts: [] })
    else if (held.isAddedWater !== read.isAddedWater || held.additiveClass !== read.additiveClass) {
      throw new CalcError('not-possible', { field: `lines[${i}].name`, value: line.name, reason: 'lines-disagree' })
    } else held.massG += line.massG
  })
  q.parts.forEach((part, i) => {
    mustBeNamed(`parts[${i}].name`, part.name)
    mustBeWithin(`parts[${i}].sharePct`, part.sharePct, { over: 0, max: 100 })
    const compound = byName.get(part.of)
    if (compound === undefined) throw unknownName(`parts[${i}].of`, part.of)
    if (compound.parts.some(({ name }) => name === part.name)) {
      throw new CalcError('duplicate', { field: `parts[${i}].name`, value: part.name })
    }
    compound.parts.push(part)
  })
  return { ingredients: [...byName.values()], weighedG, allergensOf: readAllergens(q, byName), partsAddUp: doPartsAddUp(byName) }
}

function readAllergens(q: Parameters<typeof readIngredients>[0], byName: ReadonlyMap<string, LabelIngredient>) {
  const names = new Set([...byName.keys(), ...q.parts.map(({ name }) => name)])
  const allergensOf = new Map<string, Allergen[]>()
  q.allergens.forEach(({ of, allergen }, i) => {
    if (!names.has(of)) throw unknownName(`allergens[${i}].of`, of)
    allergensOf.set(of, [...(allergensOf.get(of) ?? []), allergen])
  })
  return allergensOf
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
