import { mustVary } from '../checks'
import { CalcError } from '../error'
import type { CurveFit, DoseGroups } from './types'

type Residual = Pick<CurveFit, 'lackSumSquares' | 'residualSumSquares' | 'residualDf' | 'residualSd'>

/**
 * Checks that there are doses and values enough for a curve, and gives back how its residual is made of the spread of
 * the dose means about it and of the pure error.
 * @param parameters of the curve that are estimated; @param doses that tell them apart
 * @throws CalcError 'not-possible' with reason 'few-doses', 'no-residual-df' or 'zero-variance' (all values alike, or all
 * on the curve)
 * Source: Draper & Smith (1998), Applied Regression Analysis, section 2.1.
 */
export function residualOf(data: DoseGroups, parameters: number, doses: number): (lackSumSquares: number) => Residual {
  if (data.groups.length < doses)
    throw new CalcError('not-possible', { field: 'rows', value: data.groups.length, min: doses, reason: 'few-doses' })
  const residualDf = data.count - parameters
  if (residualDf < 1)
    throw new CalcError('not-possible', {
      field: 'rows',
      value: data.count,
      min: parameters + 1,
      reason: 'no-residual-df',
    })
  const mean = data.groups.reduce((sum, { count, offset }) => sum + count * offset, 0) / data.count
  const between = data.groups.reduce((sum, { count, offset }) => sum + count * (offset - mean) ** 2, 0)
  mustVary('rows', Math.sqrt((between + data.pureError.sumSquares) / data.count), data.largest)
  return (lackSumSquares) => {
    const residualSumSquares = lackSumSquares + data.pureError.sumSquares
    const residualSd = mustVary('rows', Math.sqrt(residualSumSquares / residualDf), data.largest)
    return { lackSumSquares, residualSumSquares, residualDf, residualSd }
  }
}
