import { figuresOf, flourOffPct, type FiguredLine, type FormulaFigures } from '@/lib/kitchen/formulas/rules'
import type { EditorStage } from './editor-state'
import { massFigure } from '@/lib/words/format/figure-in-field'
import { typedNumber } from '@/lib/words/format/typed-number'
import type { OwnUnits } from '@/lib/words/format/own-units'

export type EditorIngredient = Pick<FiguredLine, 'kind' | 'composition'> & {
  id: string
  name: string
  isEnded: boolean
}

/** Batch size as it is typed. */
export type TypedBatch = { pieces: string; scalingMassG: string; doughLossPct: string }

export type LiveFigures = {
  figures: FormulaFigures | null
  flourOffPct: number
  massOfLine: ReadonlyMap<number, number>
}

/** The figures of what is typed so far. A line without an ingredient or a sensible number does not count yet. */
export function liveFigures(
  stages: readonly EditorStage[],
  batch: TypedBatch,
  ingredients: ReadonlyMap<string, EditorIngredient>,
  units: OwnUnits,
): LiveFigures {
  const counted = stages.map((stage) => ({
    kind: stage.kind,
    lines: stage.lines.flatMap((line) => {
      const pctFlour = typedNumber(line.pctFlour, units.locale)
      const ingredient = ingredients.get(line.ingredientId)
      if (!ingredient || !isWithin(pctFlour, 0, 1000)) return []
      return [
        {
          key: line.key,
          ingredientId: ingredient.id,
          kind: ingredient.kind,
          composition: ingredient.composition,
          pctFlour,
        },
      ]
    }),
  }))
  const figures = figuresOf(counted, batchOf(batch, units))
  const massOfLine = new Map(
    counted.flatMap((stage, s) =>
      stage.lines.map((line, l) => [line.key, figures?.batch?.lineMassesG[s]?.[l] ?? 0] as const),
    ),
  )
  return {
    figures,
    flourOffPct: flourOffPct(counted.flatMap(({ lines }) => lines)),
    massOfLine: figures?.batch ? massOfLine : new Map(),
  }
}

function batchOf(typed: TypedBatch, { locale, massUnits }: OwnUnits) {
  const [pieces, scalingMass, doughLossPct] = [typed.pieces, typed.scalingMassG, typed.doughLossPct].map((text) =>
    typedNumber(text, locale),
  )
  if (typeof scalingMass !== 'number') return null
  const scalingMassG = massFigure(massUnits).read(scalingMass)
  if (
    !isWithin(pieces, 1, 10_000) ||
    !Number.isInteger(pieces) ||
    !isWithin(scalingMassG, 0, 50_000) ||
    scalingMassG === 0
  )
    return null
  return isWithin(doughLossPct, 0, 49.999) ? { pieces, scalingMassG, doughLossPct } : null
}

function isWithin(value: number | string | undefined, least: number, most: number): value is number {
  return typeof value === 'number' && value >= least && value <= most
}
