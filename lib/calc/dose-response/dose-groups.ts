import { mustBeReading, mustBeWithin, mustHaveAtLeast } from '../checks'
import { groupBy } from '../group-by'
import { summariseValues } from '../comparison/summarise-values'
import type { DoseGroups, DoseRow } from './types'

/**
 * Values by dose: mean of each, and the pure error of those that share a dose.
 * @param rows one or more; doses 0 to 1e12 and not all below 1e-12, values in the measure's own unit
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: Draper & Smith (1998), Applied Regression Analysis, section 2.1 (pure error).
 * @example doseGroups([{ dose: 0, y: 1 }, { dose: 1, y: 2 }, { dose: 1, y: 4 }]).pureError // { sumSquares: 2, df: 1 }
 */
export function doseGroups(rows: readonly DoseRow[]): DoseGroups {
  mustHaveAtLeast('rows', rows, 1)
  rows.forEach(({ dose, y }, i) => {
    mustBeWithin(`rows[${i}].dose`, dose, { min: 0, max: 1e12 })
    mustBeReading(`rows[${i}].y`, y)
  })
  const origin = rows[0]!.y
  const summaries = [...groupBy(rows, (row) => String(row.dose)).values()]
    .map((list) => ({
      dose: list[0]!.dose,
      ...summariseValues(
        'rows',
        list.map(({ y }) => y),
        origin,
      ),
    }))
    .sort((a, b) => a.dose - b.dose)
  mustBeWithin('highestDose', summaries.at(-1)!.dose, { min: 1e-12 })
  return {
    groups: summaries.map(({ dose, count, offset }) => ({ dose, count, offset })),
    origin,
    count: rows.length,
    largest: rows.reduce((most, { y }) => Math.max(most, Math.abs(y)), 0),
    pureError: {
      sumSquares: summaries.reduce((sum, group) => sum + group.sumSquares, 0),
      df: rows.length - summaries.length,
    },
  }
}
