import { CalcError } from '../error'
import { doughWaterWarnings, type DoughWaterWarning } from './dough-water-warnings'
import { mustBeFormula } from './must-be-formula'
import { nutrientShare } from './nutrient-share'
import type { Formula } from './types'

/**
 * Four meanings of 'hydration' are in use, all on total flour and never under one label:
 * plain-water: lines that are plain water; poured-liquids: water, milk, buttermilk and oil at full mass;
 * water-beside-flour: true water of every ingredient but flour; all-water: that and the flour's own water.
 */
export type HydrationConvention = 'plain-water' | 'poured-liquids' | 'water-beside-flour' | 'all-water'

export type Hydration = {
  convention: HydrationConvention
  massG: number
  pctFlour: number
  /** Lines whose water is not stated: then the figure is a lower bound. */
  notStatedLineIds: string[]
  warnings: DoughWaterWarning[]
}

/**
 * Hydration in one named convention.
 * @returns a warning where it is no dough's; none while it is a lower bound
 * @throws CalcError as mustBeFormula; 'not-possible' with reason 'flour-is-not-poured'
 * Source: the four conventions: trade and teaching glossaries of dough yield and baker's percentage; common practice.
 * @example flour 500 g, water 300 g, 'plain-water': 60 %
 */
export function hydration(formula: Formula, convention: HydrationConvention): Hydration {
  const flourMassG = mustBeFormula(formula)
  const notStatedLineIds: string[] = []
  let massG = 0
  const powder = formula.lines.findIndex((line) => line.isPouredLiquid && line.isFlour)
  if (powder >= 0)
    throw new CalcError('not-possible', { field: `lines[${powder}].isPouredLiquid`, reason: 'flour-is-not-poured' })
  for (const line of formula.lines) {
    switch (convention) {
      case 'plain-water':
        if (line.kind === 'water') massG += line.massG
        break
      case 'poured-liquids':
        if (line.isPouredLiquid) massG += line.massG
        break
      case 'water-beside-flour':
      case 'all-water': {
        if (convention === 'water-beside-flour' && line.isFlour) break
        const share = nutrientShare(line.composition, 'water')
        if (share === null) notStatedLineIds.push(line.id)
        else massG += share * line.massG
        break
      }
      default: {
        const never: never = convention
        return never
      }
    }
  }
  const pctFlour = (100 * massG) / flourMassG
  return {
    convention,
    massG,
    pctFlour,
    notStatedLineIds,
    warnings: notStatedLineIds.length > 0 ? [] : doughWaterWarnings(pctFlour),
  }
}
