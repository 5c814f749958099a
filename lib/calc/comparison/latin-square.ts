import { mustBeWithin, mustVary } from '../checks'
import { CalcError } from '../error'
import type { AnovaRow } from '../analysis/fit-additive'
import { fTail } from '../distributions/f-tail'
import { groupBy } from '../group-by'
import { meanInterval } from './mean-interval'
import type { ArmMeanInterval } from './one-way-anova'
import { summariseArms } from './summarise-arms'
import { summariseValues } from './summarise-values'

export type LatinSquareAnova = {
  method: 'latin-square'
  /** row, column, arm, residual. */
  anova: AnovaRow[]
  residualSd: number
  residualDf: number
  confidence: number
  arms: ArmMeanInterval[]
  /** Standard error of a difference between two arms, and half the width of its interval, not adjusted for several arms. */
  differenceSe: number
  differenceHalfWidth: number
}

/**
 * Latin square: as many rows and columns as arms, every arm once in each (places of an oven by shifts, say).
 * @param rows one per cell, all cells; 3 to 100 arms; @param confidence 0.5 to 0.9999
 * @throws CalcError as summariseArms; 'out-of-range' for fewer than 3 or more than 100 arms; 'wrong-shape' with reason
 * 'not-a-square', 'repeated-in-row' or 'repeated-in-column' and the arm; 'not-possible' with reason 'zero-variance'
 * Source: Cochran & Cox (1957), Experimental Designs, section 4.3; Fisher (1935), The Design of Experiments, chapter V.
 */
export function latinSquareAnova(q: {
  rows: readonly { row: string; column: string; arm: string; y: number }[]
  confidence: number
}): LatinSquareAnova {
  const { arms, origin, largest, count } = summariseArms(q.rows, 1)
  const t = mustBeWithin('arms', arms.length, { min: 3, max: 100 })
  const rowMeans = meansBy(q.rows, 'row', origin)
  const columnMeans = meansBy(q.rows, 'column', origin)
  if (count !== t * t || rowMeans.size !== t || columnMeans.size !== t) {
    throw new CalcError('wrong-shape', { field: 'rows', value: count, min: t * t, max: t * t, reason: 'not-a-square' })
  }
  mustComeOnce(q.rows, 'row')
  mustComeOnce(q.rows, 'column')
  const armMeans = new Map(arms.map(({ arm, offset }) => [arm, offset]))
  const grand = arms.reduce((sum, { offset }) => sum + offset, 0) / t

  const squares = (means: ReadonlyMap<string, number>) =>
    t * [...means.values()].reduce((sum, mean) => sum + (mean - grand) ** 2, 0)
  const residualSumSquares = q.rows.reduce((sum, { row, column, arm, y }) => {
    const fitted = rowMeans.get(row)! + columnMeans.get(column)! + armMeans.get(arm)! - 2 * grand
    return sum + (y - origin - fitted) ** 2
  }, 0)
  const residualDf = (t - 1) * (t - 2)
  const residualSd = mustVary('rows', Math.sqrt(residualSumSquares / residualDf), largest)
  const meanSquare = residualSumSquares / residualDf
  const tested = (source: string, sumSquares: number): AnovaRow => {
    const f = sumSquares / (t - 1) / meanSquare
    return {
      source,
      df: t - 1,
      sumSquares,
      meanSquare: sumSquares / (t - 1),
      f,
      p: fTail({ f, df1: t - 1, df2: residualDf, tail: 'upper' }),
    }
  }
  const differenceSe = residualSd * Math.sqrt(2 / t)
  return {
    method: 'latin-square',
    anova: [
      tested('row', squares(rowMeans)),
      tested('column', squares(columnMeans)),
      tested('arm', squares(armMeans)),
      { source: 'residual', df: residualDf, sumSquares: residualSumSquares, meanSquare, f: null, p: null },
    ],
    residualSd,
    residualDf,
    confidence: q.confidence,
    arms: arms.map(({ arm, mean }) => ({
      arm,
      count: t,
      mean,
      ...meanInterval({ estimate: mean, se: residualSd / Math.sqrt(t), df: residualDf, confidence: q.confidence }),
    })),
    differenceSe,
    differenceHalfWidth: meanInterval({ estimate: 0, se: differenceSe, df: residualDf, confidence: q.confidence }).high,
  }
}

/** Means by row or by column, off the origin. */
function meansBy(
  rows: readonly { row: string; column: string; y: number }[],
  by: 'row' | 'column',
  origin: number,
): Map<string, number> {
  const groups = groupBy(rows, (cell) => cell[by])
  return new Map(
    [...groups].map(([name, cells]) => [
      name,
      summariseValues(
        'rows',
        cells.map(({ y }) => y),
        origin,
      ).offset,
    ]),
  )
}

function mustComeOnce(rows: readonly { row: string; column: string; arm: string }[], by: 'row' | 'column'): void {
  const seen = new Set<string>()
  for (const cell of rows) {
    const key = JSON.stringify([cell[by], cell.arm])
    if (seen.has(key))
      throw new CalcError('wrong-shape', {
        field: 'rows',
        value: `${cell[by]} ${cell.arm}`,
        reason: `repeated-in-${by}`,
      })
    seen.add(key)
  }
}
