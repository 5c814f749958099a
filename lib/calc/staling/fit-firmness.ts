import { leastSquares } from '../analysis/least-squares'
import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { bestFit } from '../fitting/best-fit'
import { fitCurve, type CurveFit } from '../fitting/fit-curve'

export type FirmnessReading = { days: number; firmness: number }

export type FirmnessFit = {
  startFirmness: number
  /** null when the start was given. */
  startStandardError: number | null
  endFirmness: number
  endStandardError: number
  ratePerDay: number
  rateStandardError: number
  residualSumSquares: number
  residualSd: number
  residualDf: number
  /** 'end-not-seen': the fitted end lies more than half the rise seen above the firmest reading, so it is a guess. */
  warnings: 'end-not-seen'[]
}

/** Rates tried first, so many halvings over the storage that was seen. */
const START_HALVINGS = [0.03, 0.3, 1, 3, 10] as const

/**
 * Fits first-order firming to readings by least squares: the start, the end and the rate, with their standard errors.
 * Readings of loaves of one batch speak of that batch only.
 * @param readings at least one more than what is fitted, over at least three days of reading (two when the start is
 *   given); days 0 to 10,000, firmness ≥ 0, at most 10,000
 * @param startFirmness what the crumb had at day 0; null when it is fitted too
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'too-few-times', 'no-firming' or
 *   'curve-not-determined' (a straight line has no end); 'no-convergence'
 * Source: Cornford, Axford and Elton (1964), Cereal Chemistry 41: 216–229; least squares as fitCurve.
 */
export function fitFirmness(q: { readings: readonly FirmnessReading[]; startFirmness: number | null }): FirmnessFit {
  const fixed = q.startFirmness === null ? null : mustBeWithin('startFirmness', q.startFirmness, { min: 0 })
  mustHaveAtLeast('readings', q.readings, fixed === null ? 4 : 3)
  mustBeWithin('readings.length', q.readings.length, { max: 10_000 })
  q.readings.forEach((reading, i) => {
    mustBeWithin(`readings[${i}].days`, reading.days, { min: 0, max: 10_000 })
    mustBeWithin(`readings[${i}].firmness`, reading.firmness, { min: 0 })
  })
  const times = new Set(q.readings.map(({ days }) => days).filter((days) => fixed === null || days > 0)).size
  if (times < (fixed === null ? 3 : 2)) {
    throw new CalcError('not-possible', { field: 'readings', value: times, reason: 'too-few-times' })
  }
  const firmest = Math.max(...q.readings.map(({ firmness }) => firmness))
  const softest = fixed ?? Math.min(...q.readings.map(({ firmness }) => firmness))
  if (firmest <= softest) throw new CalcError('not-possible', { field: 'readings', reason: 'no-firming' })
  const fit = fitOfFirming(q.readings, fixed)
  const [ratePerDay, risen, fittedStart = fixed ?? 0] = fit.parameters as [number, number, number?]
  if (!(ratePerDay > 0 && risen > 0)) throw new CalcError('not-possible', { field: 'readings', reason: 'no-firming' })
  const covariance = (i: number, j: number) => fit.covariance[i]?.[j] ?? 0
  const endFirmness = fittedStart + risen
  return {
    startFirmness: fittedStart,
    startStandardError: fixed === null ? Math.sqrt(covariance(2, 2)) : null,
    endFirmness,
    endStandardError: Math.sqrt(covariance(1, 1) + 2 * covariance(1, 2) + covariance(2, 2)),
    ratePerDay,
    rateStandardError: Math.sqrt(covariance(0, 0)),
    residualSumSquares: fit.residualSumSquares,
    residualSd: Math.sqrt(fit.residualSumSquares / fit.residualDf),
    residualDf: fit.residualDf,
    warnings: endFirmness > firmest + 0.5 * (firmest - fittedStart) ? ['end-not-seen'] : [],
  }
}

function fitOfFirming(readings: readonly FirmnessReading[], fixed: number | null): CurveFit {
  const x = readings.map(({ days }) => days)
  const y = readings.map(({ firmness }) => firmness)
  const lastDays = Math.max(...x)
  const fitFrom = (halvings: number) => () => {
    const rate = (halvings * Math.LN2) / lastDays
    return fitCurve({
      x,
      y,
      start: [rate, ...startLimits(x, y, rate, fixed)],
      curve: (days, [k = 0, risen = 0, start = fixed ?? 0]) => {
        const left = Math.exp(-k * days)
        const gradient = [risen * days * left, 1 - left]
        return { value: start + risen * (1 - left), gradient: fixed === null ? [...gradient, 1] : gradient }
      },
    })
  }
  return bestFit(START_HALVINGS.map(fitFrom))
}

/** At a given rate the rest is a straight line in 1 − exp(−k·t). */
function startLimits(x: readonly number[], y: readonly number[], rate: number, fixed: number | null): number[] {
  const rows = x.map((days) => [1 - Math.exp(-rate * days), ...(fixed === null ? [1] : [])])
  return leastSquares({ x: rows, y: y.map((value) => value - (fixed ?? 0)) }).coefficients
}
