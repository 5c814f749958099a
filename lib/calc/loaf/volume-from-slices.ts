import { mustBeWithin, mustHaveAtLeast } from '../checks'

/**
 * Loaf volume from the areas of evenly spaced slices over its whole length: V = spacing × Σ areas (Cavalieri).
 * Every slice stands for the spacing around it, so the loaf is cut from end to end and no slice is left out.
 * @param sliceAreasMm2 all slices in order, n ≥ 3, mm², > 0
 * @param spacingMm distance between cuts, mm, > 0
 * @returns mL
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: Cavalieri's principle; common practice, no source.
 * @example 20 slices of 10 000 mm² at 10 mm: 2000 mL
 */
export function volumeFromSlicesMl(q: { sliceAreasMm2: readonly number[]; spacingMm: number }): number {
  mustHaveAtLeast('sliceAreasMm2', q.sliceAreasMm2, 3)
  mustBeWithin('spacingMm', q.spacingMm, { over: 0 })
  const sumMm2 = q.sliceAreasMm2.reduce(
    (sum, area, i) => sum + mustBeWithin(`sliceAreasMm2[${i}]`, area, { over: 0 }),
    0,
  )
  return (sumMm2 * q.spacingMm) / 1000
}
