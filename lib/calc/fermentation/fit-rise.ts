import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { bestFit } from '../fitting/best-fit'
import { fitCurve, type CurveFit } from '../fitting/fit-curve'
import { riseAt, type RiseCurve, type RiseCurveKind } from './rise-curve'

export type RiseReading = { atMin: number; risePct: number }

export type RiseFit = RiseCurve & {
  mostRiseStandardErrorPct: number
  steepestStandardErrorPctPerMin: number
  lagStandardErrorMin: number
  /** Of most rise, steepest slope and lag, in that order. */
  covariance: number[][]
  residualSumSquares: number
  residualSdPct: number
  residualDf: number
  /** 'end-not-seen': the fitted end lies more than a fifth above the highest reading, so it is a guess. */
  warnings: 'end-not-seen'[]
}

/** How far above the highest reading the end is looked for first. */
const START_ENDS = [1.02, 1.3, 2, 5] as const

/**
 * Fits a sigmoid to the rise of one dough against time, by least squares. The errors speak of this dough's curve and
 * readings, not of doughs to come: doughs differ by more than readings of one jar do.
 * @param readings at least four times, minutes; rise in % of the start, −100 to 10,000; at most 10,000
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'too-few-times', 'no-rise' or
 *   'curve-not-determined'; 'no-convergence' when no sigmoid fits
 * Source: curves as riseAt; least squares as fitCurve.
 */
export function fitRise(q: { readings: readonly RiseReading[]; kind: RiseCurveKind }): RiseFit {
  const readings = [...mustHaveAtLeast('readings', q.readings, 4)]
  mustBeWithin('readings.length', readings.length, { max: 10_000 })
  readings.forEach((reading, i) => {
    mustBeWithin(`readings[${i}].atMin`, reading.atMin, { min: -1e5, max: 1e5 })
    mustBeWithin(`readings[${i}].risePct`, reading.risePct, { min: -100, max: 10_000 })
  })
  readings.sort((a, b) => a.atMin - b.atMin)
  const means = meansByTime(readings)
  if (means.length < 4)
    throw new CalcError('not-possible', { field: 'readings', value: means.length, reason: 'too-few-times' })
  const highest = Math.max(...means.map(({ risePct }) => risePct))
  const steepest = steepestPiece(means)
  if (highest <= 0 || steepest.pctPerMin <= 0)
    throw new CalcError('not-possible', { field: 'readings', reason: 'no-rise' })
  const fit = fitOfRise(q.kind, readings, highest, steepest)
  const [mostRisePct, steepestPctPerMin, lagMin] = fit.parameters as [number, number, number]
  const error = (j: number) => Math.sqrt(fit.covariance[j]![j]!)
  return {
    mostRisePct,
    steepestPctPerMin,
    lagMin,
    mostRiseStandardErrorPct: error(0),
    steepestStandardErrorPctPerMin: error(1),
    lagStandardErrorMin: error(2),
    covariance: fit.covariance,
    residualSumSquares: fit.residualSumSquares,
    residualSdPct: Math.sqrt(fit.residualSumSquares / fit.residualDf),
    residualDf: fit.residualDf,
    warnings: mostRisePct > 1.2 * highest ? ['end-not-seen'] : [],
  }
}

function meansByTime(sorted: readonly RiseReading[]): RiseReading[] {
  const groups: RiseReading[][] = []
  for (const reading of sorted) {
    const last = groups.at(-1)
    if (last?.[0]?.atMin === reading.atMin) last.push(reading)
    else groups.push([reading])
  }
  return groups.map((group) => ({
    atMin: group[0]!.atMin,
    risePct: group.reduce((sum, { risePct }) => sum + risePct, 0) / group.length,
  }))
}

/** The steepest line over a third of the readings: over neighbours alone it would be noise. */
function steepestPiece(means: readonly RiseReading[]): { pctPerMin: number; zeroAtMin: number } {
  const over = Math.max(1, Math.floor(means.length / 3))
  let steepest = { pctPerMin: 0, zeroAtMin: 0 }
  for (let i = over; i < means.length; i++) {
    const [from, to] = [means[i - over]!, means[i]!]
    const pctPerMin = (to.risePct - from.risePct) / (to.atMin - from.atMin)
    if (pctPerMin > steepest.pctPerMin) steepest = { pctPerMin, zeroAtMin: from.atMin - from.risePct / pctPerMin }
  }
  return steepest
}

function fitOfRise(
  kind: RiseCurveKind,
  readings: readonly RiseReading[],
  highest: number,
  steepest: { pctPerMin: number; zeroAtMin: number },
): CurveFit {
  const fitFrom = (end: number) => () =>
    fitCurve({
      x: readings.map(({ atMin }) => atMin),
      y: readings.map(({ risePct }) => risePct),
      start: [end * highest, steepest.pctPerMin, steepest.zeroAtMin],
      curve: (atMin, [mostRisePct = 0, steepestPctPerMin = 0, lagMin = 0]) => {
        // Outside its range the curve is none: the step is then taken shorter.
        if (mostRisePct <= 0 || steepestPctPerMin <= 0) return { value: Number.NaN, gradient: [] }
        const { risePct, gradient } = riseAt({ kind, atMin, mostRisePct, steepestPctPerMin, lagMin })
        return { value: risePct, gradient }
      },
    })
  return bestFit(START_ENDS.map(fitFrom))
}
