import { mustBeWithin, mustHaveAtLeast } from '../checks'

export type TempReading = { atMin: number; doughTempC: number }

/** Simpson's rule over at most so many °C at a time. */
const STRIP_C = 0.5

/**
 * Integral over time of a rate that depends on the dough's temperature, with straight lines between readings.
 * Simpson's rule on strips of at most 0.5 °C, cut where the rate has a corner: within 1e-6 of the integral for the rates
 * of this folder.
 * @param readings at least two, times in minutes, each later than the one before
 * @param cornersC temperatures at which the rate is not smooth
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range' (times out of order; dough outside −20 to 100 °C)
 * Source: composite Simpson's rule, any text on numerical analysis.
 */
export function timeIntegralMin(q: {
  readings: readonly TempReading[]
  rate: (tempC: number) => number
  cornersC: readonly number[]
}): number {
  mustHaveAtLeast('readings', q.readings, 2)
  let sum = 0
  q.readings.forEach((reading, i) => {
    const before = q.readings[i - 1]
    mustBeWithin(`readings[${i}].atMin`, reading.atMin, before === undefined ? {} : { over: before.atMin })
    mustBeWithin(`readings[${i}].doughTempC`, reading.doughTempC, { min: -20, max: 100 })
    if (before !== undefined) sum += pieceMin(q, before, reading)
  })
  return sum
}

function pieceMin(
  q: { rate: (tempC: number) => number; cornersC: readonly number[] },
  from: TempReading,
  to: TempReading,
): number {
  const [a, b] = [from.doughTempC, to.doughTempC]
  const minutes = to.atMin - from.atMin
  if (a === b) return minutes * q.rate(a)
  const cuts = q.cornersC.filter((c) => c > Math.min(a, b) && c < Math.max(a, b))
  const ends = [a, ...cuts, b].sort((x, y) => (a < b ? x - y : y - x))
  let sum = 0
  for (let i = 1; i < ends.length; i++) {
    const [low, high] = [ends[i - 1]!, ends[i]!]
    const strips = Math.max(1, Math.ceil(Math.abs(high - low) / STRIP_C))
    const widthC = (high - low) / strips
    for (let s = 0; s < strips; s++) {
      const start = low + s * widthC
      const mean = (q.rate(start) + 4 * q.rate(start + widthC / 2) + q.rate(start + widthC)) / 6
      sum += mean * minutes * (widthC / (b - a))
    }
  }
  return sum
}
