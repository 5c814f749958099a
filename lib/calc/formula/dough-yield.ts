import type { DoughWaterWarning } from './dough-water-warnings'
import { hydration } from './hydration'
import { mustBeFormula } from './must-be-formula'
import type { Formula } from './types'

/**
 * Dough yield (Teigausbeute), parts of dough from 100 parts of flour.
 * Net counts flour and poured liquids only, so that net − 100 is the hydration by poured liquids;
 * gross counts everything that goes into the dough.
 * @throws CalcError as hydration
 * Source: German bread glossaries; J. Loderbauer, Das Bäckerbuch, 2016.
 * @example flour 500 g, water 300 g: net 160
 */
export function doughYield(formula: Formula): { netPct: number; grossPct: number; warnings: DoughWaterWarning[] } {
  const flourMassG = mustBeFormula(formula)
  const doughMassG = formula.lines.reduce((sum, line) => sum + line.massG, 0)
  const { pctFlour, warnings } = hydration(formula, 'poured-liquids')
  return { netPct: 100 + pctFlour, grossPct: (100 * doughMassG) / flourMassG, warnings }
}
