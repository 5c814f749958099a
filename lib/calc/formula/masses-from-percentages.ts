import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { doughMassForPiecesG, type LossConvention } from './dough-mass-for-pieces'

export type PercentageLine = { id: string; pctFlour: number; isFlour: boolean }

export type ScaleTarget =
  | { by: 'flour'; flourMassG: number }
  | { by: 'dough-mass'; doughMassG: number }
  | { by: 'pieces'; pieces: number; pieceMassG: number; lossShares: readonly number[]; losses: LossConvention }

export type ScaledFormula = {
  flourMassG: number
  doughMassG: number
  lines: { id: string; massG: number }[]
  warnings: { code: 'flours-not-100'; value: number }[]
}

/** Percentages are printed to two decimals or fewer, so sums such as 3 × 33.33 are no fault. */
const FLOUR_SUM_TOLERANCE_PCT = 0.05

/**
 * Masses from baker's percentages, for a wanted dough mass, number of pieces, or flour mass. Nothing is rounded
 * on the way: a rounded flour mass would carry its error into every other line.
 * @param lines percentage on total flour, ≥ 0 each; flours together are 100 (otherwise a warning, and the
 *   percentages are taken as they stand)
 * @throws CalcError 'empty' | 'duplicate' | 'not-finite' | 'out-of-range'; doughMassForPiecesG's for pieces
 * Source: definition of baker's percentage; common practice.
 */
export function massesFromPercentages(q: { lines: readonly PercentageLine[]; target: ScaleTarget }): ScaledFormula {
  mustHaveAtLeast('lines', q.lines, 1)
  const ids = new Set<string>()
  let totalPct = 0
  let floursPct = 0
  q.lines.forEach((line, i) => {
    if (ids.has(line.id)) throw new CalcError('duplicate', { field: `lines[${i}].id`, value: line.id })
    ids.add(line.id)
    mustBeWithin(`lines[${i}].pctFlour`, line.pctFlour, { min: 0 })
    totalPct += line.pctFlour
    if (line.isFlour) floursPct += line.pctFlour
  })
  mustBeWithin('floursPct', floursPct, { over: 0 })
  const basisMassG = basisMass(q.target, totalPct)
  return {
    flourMassG: (basisMassG * floursPct) / 100,
    doughMassG: (basisMassG * totalPct) / 100,
    lines: q.lines.map((line) => ({ id: line.id, massG: (basisMassG * line.pctFlour) / 100 })),
    warnings: Math.abs(floursPct - 100) > FLOUR_SUM_TOLERANCE_PCT ? [{ code: 'flours-not-100', value: floursPct }] : [],
  }
}

/** Mass that 100 % stands for. */
function basisMass(target: ScaleTarget, totalPct: number): number {
  switch (target.by) {
    case 'flour':
      return mustBeWithin('target.flourMassG', target.flourMassG, { over: 0 })
    case 'dough-mass':
      return (100 * mustBeWithin('target.doughMassG', target.doughMassG, { over: 0 })) / totalPct
    case 'pieces':
      return (100 * doughMassForPiecesG(target)) / totalPct
    default: {
      const never: never = target
      return never
    }
  }
}
