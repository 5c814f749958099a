import { mustBeWithin } from '../checks'
import { statedComposition } from '../formula/stated-composition'
import type { Composition, IngredientKind } from '../formula/types'
import type { ArmLine, ArmTotal, LineMove, LineSet, StandIn } from './types'

/** A line as somebody types it in: what it brings, and what of that counts against kinds that it stands in for. */
export type FlatArmLine = {
  id: string
  massG: number
  kind: IngredientKind
  resolutionG: number
  waterCounts: boolean
  standsInForFat: boolean
  standsInForSugars: boolean
  standsInForProtein: boolean
} & { readonly [Part in keyof Composition]?: number | undefined }

export type FlatControlLine = FlatArmLine & {
  mayMove: boolean
  setG?: number | undefined
  minG?: number | undefined
  maxG?: number | undefined
}

export type FlatHold = Record<
  'holdDoughMass' | 'holdFlour' | 'holdWater' | 'holdFat' | 'holdSugars' | 'holdProtein' | 'holdSalt',
  boolean
>

export function flatArmLine(line: FlatArmLine): ArmLine {
  const standsInFor: StandIn[] = []
  if (line.waterCounts) standsInFor.push('water')
  if (line.standsInForFat) standsInFor.push('fat')
  if (line.standsInForSugars) standsInFor.push('sugars')
  if (line.standsInForProtein) standsInFor.push('protein')
  return {
    id: line.id,
    massG: line.massG,
    kind: line.kind,
    isFlour: line.kind === 'flour',
    composition: statedComposition(line),
    standsInFor,
    resolutionG: line.resolutionG,
  }
}

/** The lines that the arm itself lowers, raises or leaves out. */
export function flatSets(control: readonly FlatControlLine[]): LineSet[] {
  return control.flatMap(({ id, setG }) => (setG === undefined ? [] : [{ lineId: id, massG: setG }]))
}

/**
 * The moves of the lines that may move: from `minG`, or nothing, up to `maxG`, or without end.
 * @throws CalcError 'not-finite' | 'out-of-range' when the bounds shut out the line's own mass
 */
export function flatMoves(control: readonly FlatControlLine[]): LineMove[] {
  return control.flatMap(({ id, massG, mayMove, minG = 0, maxG = null }, i) => {
    if (!mayMove) return []
    mustBeWithin(`control[${i}].massG`, massG, { min: 0 })
    mustBeWithin(`control[${i}].minG`, minG, { min: 0, max: massG })
    if (maxG !== null) mustBeWithin(`control[${i}].maxG`, maxG, { min: massG })
    return [{ lineId: id, minG, maxG }]
  })
}

export function flatHold(hold: FlatHold): ArmTotal[] {
  const totals: [boolean, ArmTotal][] = [
    [hold.holdDoughMass, 'dough-mass'],
    [hold.holdFlour, 'flour'],
    [hold.holdWater, 'water'],
    [hold.holdFat, 'fat'],
    [hold.holdSugars, 'sugars'],
    [hold.holdProtein, 'protein'],
    [hold.holdSalt, 'salt'],
  ]
  return totals.flatMap(([isHeld, total]) => (isHeld ? [total] : []))
}
