import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { readENumber } from './read-e-number'
import { nameKey } from './name-key'
import type { AdditiveClass, Allergen, AllergenStatement, ExemptMix } from './types'

export type LabelLine = {
  name: string
  massG: number
  isAddedWater?: boolean
  /** Of a volatile ingredient, such as a spirit, what is still in the bread; all of it where nothing is said. */
  leftInBreadG?: number
  additiveClass?: AdditiveClass
  eNumber?: string
  /** Its parts stand in the list as ingredients of their own; otherwise it is named, with its own list in brackets. */
  isOpened?: boolean
  exemptMix?: ExemptMix
}
export type LabelPart = {
  of: string
  name: string
  sharePct: number
  isAddedWater?: boolean
  additiveClass?: AdditiveClass
  eNumber?: string
}
export type LabelAllergen = { of: string; allergen: AllergenStatement; species?: string }

export type LabelIngredient = {
  name: string
  massG: number
  leftInBreadG: number
  isAddedWater: boolean
  additiveClass: AdditiveClass | null
  eNumber: string | null
  isOpened: boolean
  exemptMix: ExemptMix | null
  parts: LabelPart[]
  /** Of its first line. */
  lineIndex: number
}

export type ReadIngredients = {
  ingredients: LabelIngredient[]
  weighedG: number
  /** By key of the name; nothing in `present` where 'none' was said. */
  allergensOf: Map<string, { of: string; present: Allergen[]; species: { allergen: Allergen; name: string }[] }>
  /** What nobody has said an allergen or 'none' of. */
  withoutStatement: string[]
  /** Every compound's parts come to 99.5 to 100 %. */
  partsAddUp: boolean
}

/** Parts that come to this are given in full: a specification is rounded. */
export const LEAST_PARTS_PCT = 99.5
const MOST_PARTS_PCT = 100 + 1e-9

/**
 * Reads lines, parts and allergens into ingredients: lines of one name added up, each part at its compound.
 * @throws CalcError as ingredientList
 * Source: Regulation (EU) No 1169/2011, Annex VII, Part E (compound ingredients).
 */
export function readIngredients(q: {
  lines: readonly LabelLine[]
  parts: readonly LabelPart[]
  allergens: readonly LabelAllergen[]
}): ReadIngredients {
  mustHaveAtLeast('lines', q.lines, 1)
  const byName = new Map<string, LabelIngredient>()
  let weighedG = 0
  q.lines.forEach((line, i) => {
    mustBeNamed(`lines[${i}].name`, line.name)
    weighedG += mustBeWithin(`lines[${i}].massG`, line.massG, { over: 0 })
    const read = readLine(line, `lines[${i}]`)
    const key = nameKey(line.name)
    const held = byName.get(key)
    if (held === undefined) byName.set(key, { name: line.name.trim(), ...read, parts: [], lineIndex: i })
    else if (
      MUST_AGREE.some((field) => held[field] !== read[field]) ||
      held.leftInBreadG < held.massG !== read.leftInBreadG < read.massG
    ) {
      throw new CalcError('not-possible', { field: `lines[${i}].name`, value: line.name, reason: 'lines-disagree' })
    } else {
      held.massG += read.massG
      held.leftInBreadG += read.leftInBreadG
    }
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
    compound.parts.push({ ...part, eNumber: readENumber(part, `parts[${i}].eNumber`) ?? undefined })
  })
  const allergensOf = readAllergens(q, byName)
  const withoutStatement = withoutStatementIn(byName, allergensOf)
  return {
    ingredients: [...byName.values()],
    weighedG,
    allergensOf,
    withoutStatement,
    partsAddUp: doPartsAddUp(byName),
  }
}

const MUST_AGREE = ['isAddedWater', 'additiveClass', 'eNumber', 'isOpened', 'exemptMix'] as const

function readLine(line: LabelLine, field: string) {
  const isAddedWater = line.isAddedWater ?? false
  if (isAddedWater && line.leftInBreadG !== undefined) {
    throw new CalcError('not-possible', {
      field: `${field}.leftInBreadG`,
      value: line.leftInBreadG,
      reason: 'water-is-worked-out',
    })
  }
  return {
    massG: line.massG,
    leftInBreadG: mustBeWithin(`${field}.leftInBreadG`, line.leftInBreadG ?? line.massG, { min: 0, max: line.massG }),
    isAddedWater,
    additiveClass: line.additiveClass ?? null,
    eNumber: readENumber(line, `${field}.eNumber`),
    isOpened: line.isOpened ?? false,
    exemptMix: line.exemptMix ?? null,
  }
}

/** The two whose kind is asked for; nuts are told apart already. */
const HAS_SPECIES = ['fish', 'crustaceans'] as const

function readAllergens(q: Parameters<typeof readIngredients>[0], byName: ReadonlyMap<string, LabelIngredient>) {
  const names = new Map<string, string>()
  for (const { name } of [...byName.values(), ...q.parts]) if (!names.has(nameKey(name))) names.set(nameKey(name), name)
  const allergensOf: ReadIngredients['allergensOf'] = new Map()
  q.allergens.forEach(({ of, allergen, species }, i) => {
    const key = nameKey(of)
    const name = names.get(key)
    if (name === undefined) throw unknownName(`allergens[${i}].of`, of)
    const held = allergensOf.get(key)
    const isNone = allergen === 'none'
    if (held !== undefined && isNone !== (held.present.length === 0)) {
      throw new CalcError('not-possible', { field: `allergens[${i}].allergen`, value: of, reason: 'lines-disagree' })
    }
    if (species !== undefined && !HAS_SPECIES.some((one) => one === allergen)) {
      throw new CalcError('not-possible', {
        field: `allergens[${i}].species`,
        value: species,
        reason: 'no-species-asked',
      })
    }
    allergensOf.set(key, {
      of: name,
      present: [...(held?.present ?? []), ...(isNone ? [] : [allergen])],
      species: [...(held?.species ?? []), ...(isNone || !species?.trim() ? [] : [{ allergen, name: species.trim() }])],
    })
  })
  for (const { name, parts } of byName.values()) {
    if (allergensOf.get(nameKey(name))?.present.length !== 0) continue
    const holding = parts.find((part) => (allergensOf.get(nameKey(part.name))?.present.length ?? 0) > 0)
    if (holding)
      throw new CalcError('not-possible', { field: 'allergens', value: holding.name, reason: 'lines-disagree' })
  }
  return allergensOf
}

/**
 * A mix is spoken for by itself, or by every one of its parts. An opened one speaks for its parts only by 'none': what
 * it holds may be in any of them.
 */
function withoutStatementIn(byName: ReadonlyMap<string, LabelIngredient>, allergensOf: ReadIngredients['allergensOf']) {
  const isSaid = (name: string) => allergensOf.has(nameKey(name))
  const open = [...byName.values()].flatMap((one) => {
    const said = allergensOf.get(nameKey(one.name))
    if (said !== undefined && !(one.isOpened && said.present.length > 0)) return []
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
