import { mustBeWithin, mustHaveAtLeast } from '../checks'

/**
 * Bulk density of seed from fillings of a box of known volume: mean filling over volume.
 * @param fillingMassesG repeated fillings, struck off level, g, > 0
 * @param boxVolumeMl > 0, by water or by its inside measures
 * @returns g/mL
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: definition; common practice, no source.
 */
export function seedBulkDensityGPerMl(q: { fillingMassesG: readonly number[]; boxVolumeMl: number }): number {
  mustHaveAtLeast('fillingMassesG', q.fillingMassesG, 1)
  mustBeWithin('boxVolumeMl', q.boxVolumeMl, { over: 0 })
  const sumG = q.fillingMassesG.reduce(
    (sum, massG, i) => sum + mustBeWithin(`fillingMassesG[${i}]`, massG, { over: 0 }),
    0,
  )
  return sumG / q.fillingMassesG.length / q.boxVolumeMl
}
