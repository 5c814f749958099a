import 'server-only'
import { doughYield } from '../../calc/formula/dough-yield'
import { hydration } from '../../calc/formula/hydration'
import type { Formula } from '../../calc/formula/types'
import type { IngredientKind, StageKind } from '../../db/generated/enums'
import { calcKinds } from '../formulas/rules'
import { isMixingWater } from '../trials/mixing-water'
import { meanOf } from './count-batches'
import type { MeasuredBatch } from './trial-facts'

export type MixedLine = { weighedG: number; ingredient: { kind: IngredientKind }; stage: { kind: StageKind } }

export type DoughAsMixed = {
  arm: number
  /** Water of the final dough that was weighed in on average, g; null unless every dough has it in the book. */
  waterTakenG: number | null
  /** Plain water on flour, pre-ferments with it, as planned and as taken, %. */
  hydrationPct: { planned: number; taken: number | null } | null
  /** All of the dough from 100 parts of flour. Both are null where the dough has no flour. */
  doughYield: { planned: number; taken: number | null } | null
}

/**
 * What a dough was mixed with: the water that was really taken in place of the planned, once it is in the book of every
 * dough that counts. One dough without it would stand for none of the others.
 * @param batches of this arm that count
 * Source: conventions as hydration ('plain-water') and doughYield (gross).
 */
export function doughAsMixed(
  arm: number,
  lines: readonly MixedLine[],
  batches: readonly MeasuredBatch[],
): DoughAsMixed {
  const waterTakenG = waterTaken(batches)
  const planned = formulaOf(lines)
  const taken = waterTakenG === null ? null : formulaOf(withWater(lines, waterTakenG))
  if (!planned.lines.some(({ isFlour, massG }) => isFlour && massG > 0))
    return { arm, waterTakenG, hydrationPct: null, doughYield: null }
  return {
    arm,
    waterTakenG,
    hydrationPct: {
      planned: hydration(planned, 'plain-water').pctFlour,
      taken: taken && hydration(taken, 'plain-water').pctFlour,
    },
    doughYield: { planned: doughYield(planned).grossPct, taken: taken && doughYield(taken).grossPct },
  }
}

/** The mean of the water in the book, g; null unless it is there for every batch. */
export function waterTaken(batches: readonly MeasuredBatch[]): number | null {
  const values = batches.flatMap(({ conditions }) => conditions['water-added'] ?? [])
  return values.length > 0 && values.length === batches.length ? meanOf(values) : null
}

/** The lines with so much mixing water in place of the planned, of several in proportion. Where none was planned they stay. */
export function withWater<Line extends MixedLine>(lines: readonly Line[], waterG: number): Line[] {
  const plannedG = lines.filter(isMixingWater).reduce((sum, { weighedG }) => sum + weighedG, 0)
  return lines.map((line) =>
    isMixingWater(line) && plannedG > 0 ? { ...line, weighedG: (line.weighedG * waterG) / plannedG } : line,
  )
}

function formulaOf(lines: readonly MixedLine[]): Formula {
  return {
    stages: [{ id: 'dough', kind: 'final-dough' }],
    lines: lines
      .map(({ weighedG, ingredient: { kind } }, i) => ({
        id: String(i),
        ingredientId: String(i),
        stageId: 'dough',
        massG: weighedG,
        kind: calcKinds[kind],
        isFlour: kind === 'flour',
        isPouredLiquid: false,
        composition: null,
      }))
      .filter(({ massG }) => massG > 0),
  }
}
