import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/**
 * Loaf volume by seed displacement, read as volumes: V = full − empty − offset.
 * @param withLoafMl reading of the gauge with the loaf in it, mL, ≥ 0
 * @param withoutLoafMl reading without it (0 on a gauge that is set to zero), mL, ≥ 0
 * @param offsetMl what the gauge reads too much, mL: extra seed put in for small loaves, or an offset from calibration;
 *   negative when it reads too little
 * @returns mL, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'no-volume' when nothing is left
 * Source: AACC 10-05.01, rapeseed displacement (guideline); offset as in the volumeter page of Oregon State University.
 * @example 210 mL with and 150 mL without: 60 mL
 */
export function displacedVolumeMl(q: { withLoafMl: number; withoutLoafMl: number; offsetMl: number }): number {
  mustBeWithin('withLoafMl', q.withLoafMl, { min: 0 })
  mustBeWithin('withoutLoafMl', q.withoutLoafMl, { min: 0 })
  mustBeWithin('offsetMl', q.offsetMl)
  const volumeMl = q.withLoafMl - q.withoutLoafMl - q.offsetMl
  if (volumeMl <= 0)
    throw new CalcError('not-possible', { field: 'withLoafMl', value: q.withLoafMl, reason: 'no-volume' })
  return volumeMl
}
