import type { DoseGroups } from './types'

export type ProfilePoint = {
  /** Less the common origin. */
  e0: number
  emax: number
  /** Of the dose means about the curve. */
  lackSumSquares: number
  /** By the log of ed50. */
  derivative: number
}

/**
 * The best saturating curve with a given dose of half the effect: e0 and emax are linear there. Infinite stands for
 * the limit, a straight line, whose emax is then the slope times the highest dose.
 * @param ed50 > 0 or Infinity; @param e0 given, less the origin, or null where it is estimated
 * Source: Golub & Pereyra (1973), SIAM J. Numer. Anal. 10 (variable projection).
 */
export function saturatingProfile(data: DoseGroups, ed50: number, e0: number | null): ProfilePoint {
  const top = data.groups.at(-1)!.dose
  const points = data.groups.map(({ dose, count, offset }) => ({
    count,
    offset,
    h: ed50 === Infinity ? dose / top : dose / (ed50 + dose),
  }))
  const sum = (of: (point: (typeof points)[number]) => number) =>
    points.reduce((total, point) => total + point.count * of(point), 0)
  const n = sum(() => 1)
  const [centreH, centreY] = e0 === null ? [sum(({ h }) => h) / n, sum(({ offset }) => offset) / n] : [0, e0]
  const emax = sum(({ h, offset }) => (h - centreH) * (offset - centreY)) / sum(({ h }) => (h - centreH) ** 2)
  const left = ({ h, offset }: (typeof points)[number]) => offset - centreY - emax * (h - centreH)
  return {
    e0: centreY - emax * centreH,
    emax,
    lackSumSquares: sum((point) => left(point) ** 2),
    derivative: ed50 === Infinity ? 0 : 2 * emax * sum((point) => left(point) * point.h * (1 - point.h)),
  }
}
