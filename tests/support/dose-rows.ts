import fc from 'fast-check'
import type { DoseRow } from '@/lib/calc/dose-response/types'
import { reading } from './arm-rows'

export const ladder = [0, 0.5, 1, 2, 4, 8]

/** Two values at each dose that lie equally far to both sides of the curve: the fit must be the curve itself. */
export function aboutCurve(curve: (dose: number) => number, off: number, doses: readonly number[] = ladder): DoseRow[] {
  return doses.flatMap((dose) => [
    { dose, y: curve(dose) - off },
    { dose, y: curve(dose) + off },
  ])
}

export const saturated = (e0: number, emax: number, ed50: number) => (dose: number) =>
  e0 + (emax * dose) / (ed50 + dose)

/** Any two values at each dose of the ladder. */
export const anyRows = fc
  .array(reading, { minLength: 2 * ladder.length, maxLength: 2 * ladder.length })
  .filter((values) => new Set(values).size > 4)
  .map((values) => values.map((y, i): DoseRow => ({ dose: ladder[Math.floor(i / 2)]!, y })))

/** Ten thousand values, each at a dose of its own. */
export const tenThousandDoses: DoseRow[] = Array.from({ length: 10_000 }, (_, i) => ({
  dose: i / 1000,
  y: saturated(2400, 300, 2)(i / 1000) + 20 * Math.sin(i * i),
}))
