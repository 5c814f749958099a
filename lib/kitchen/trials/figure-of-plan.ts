import 'server-only'
import type { planFigures } from '../../words/en/plan-figures'

/** What a person has to look at when a plan cannot be worked out. Words for it are in lib/words, keyed by it. */
export type PlanFigure = keyof typeof planFigures

/** The names that calculations have for the figures of a plan, by what a person calls them. */
const names: Record<Exclude<PlanFigure, 'several'>, readonly string[]> = {
  percentages: ['pctFlour', 'floursPct', 'flourMassG', 'flourG', 'lines', 'stages', 'control', 'target'],
  pieces: ['pieces', 'pieceMassG', 'doughMassG'],
  loss: ['lossShares'],
  masses: ['massG'],
  doses: ['dose', 'doseG', 'netMassG', 'activeMassG', 'added', 'set', 'moves', 'mostCarrierG', 'mostPremixG'],
  active: ['activeShare', 'strengthShare'],
  'equal-by': ['equalBy'],
  composition: ['composition', 'specificHeatJPerGK'],
  held: ['hold', 'heldShare'],
  scales: ['scales', 'resolutionG', 'repeatabilityG', 'capacityG', 'errorShare', 'coverageFactor'],
  'dough-temperature': ['doughTempC', 'finalTempC'],
  temperatures: ['tempC'],
  water: [
    'waterMassG',
    'wantedTempC',
    'tapTempC',
    'coldTempC',
    'hotTempC',
    'mostTempC',
    'iceTempC',
    'mostIceShare',
    'constants',
  ],
  mixing: ['friction', 'bowl', 'roomHeatJ'],
  size: ['design', 'blocks', 'days', 'doughs', 'loaves', 'arms', 'count', 'trueDifferences', 'runs'],
  margin: ['margin', 'worthwhile', 'loss', 'confidence', 'spread', 'estimate', 'low', 'high'],
}

const figures = new Map(
  Object.entries(names).flatMap(([figure, known]) => known.map((name) => [name, figure as PlanFigure] as const)),
)

/**
 * What a person has to look at for a calculation's field, `lines[2].pctFlour`: the innermost of its names that stands
 * for a figure of the plan, and 'several' where none does.
 */
export function figureOfPlan(field: string): PlanFigure {
  const path = field.split(/[^A-Za-z]+/).reverse()
  return path.map((name) => figures.get(name)).find((figure) => figure !== undefined) ?? 'several'
}
