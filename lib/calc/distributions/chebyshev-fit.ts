import { mustBeWhole, mustBeWithin } from '../checks'
import { CalcError } from '../error'

/**
 * A polynomial through a smooth function at the Chebyshev points of an interval, for a function that is dear to work
 * out and asked for often. Accuracy grows exponentially with the points where the function is analytic.
 * @param points 2 to 200
 * @returns the polynomial; meant for x from low to high only
 * @throws CalcError 'not-finite' | 'out-of-range' (low ≥ high)
 * Source: Trefethen (2013), Approximation Theory and Approximation Practice, chapters 3 and 8; sum by Clenshaw (1955).
 */
export function chebyshevFit(q: {
  f: (x: number) => number
  low: number
  high: number
  points: number
}): (x: number) => number {
  const points = mustBeWhole('points', q.points, { min: 2, max: 200 })
  const [low, high] = [mustBeWithin('low', q.low), mustBeWithin('high', q.high)]
  if (low >= high) throw new CalcError('out-of-range', { field: 'high', value: high, min: low })
  const [middle, half] = [(low + high) / 2, (high - low) / 2]
  const angles = Array.from({ length: points }, (_, i) => (Math.PI * (i + 0.5)) / points)
  const values = angles.map((angle) => mustBeWithin('f', q.f(middle + half * Math.cos(angle))))
  const coefficients = angles.map((_, j) => {
    const sum = values.reduce((total, value, i) => total + value * Math.cos(j * angles[i]!), 0)
    return (sum * (j === 0 ? 1 : 2)) / points
  })
  return (x) => {
    const u = (2 * (x - middle)) / half
    let [b1, b2] = [0, 0]
    for (let j = points - 1; j > 0; j--) [b1, b2] = [u * b1 - b2 + coefficients[j]!, b1]
    return (u * b1) / 2 - b2 + coefficients[0]!
  }
}
