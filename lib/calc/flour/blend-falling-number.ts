import { mustBeWithin, mustHaveAtLeast, mustHaveAtMost } from '../checks'
import { CalcError } from '../error'
import { liquefactionNumber } from './liquefaction-number'

/**
 * Falling number of a blend: liquefaction numbers averaged by mass, and back to seconds. The blend lies nearer to the
 * flour with more enzyme than the mean of the seconds does. An estimate: measure the blend.
 * @param parts one to a thousand; massG ≥ 0, some of it above 0; fallingNumberS 60 to 2000 s, at one moisture basis
 * @throws CalcError 'empty' | 'wrong-shape' | 'not-finite' | 'out-of-range'; 'not-possible' with reason
 *   'falling-number-below-60' or 'no-mass'
 * Source: US seed-company agronomist, 2020, after USDA grain inspection.
 * @example equal parts of 400 and 220 s: 278.85 s, not 310
 */
export function blendFallingNumber(q: { parts: readonly { massG: number; fallingNumberS: number }[] }): {
  liquefactionNumber: number
  fallingNumberS: number
} {
  mustHaveAtLeast('parts', q.parts, 1)
  mustHaveAtMost('parts', q.parts, 1000)
  let [massG, weighted] = [0, 0]
  q.parts.forEach((part, i) => {
    const ln = liquefactionNumber(`parts[${i}].fallingNumberS`, part.fallingNumberS)
    massG += mustBeWithin(`parts[${i}].massG`, part.massG, { min: 0, max: 1e12 })
    weighted += part.massG * ln
  })
  if (massG <= 0) throw new CalcError('not-possible', { field: 'parts', value: massG, reason: 'no-mass' })
  const mean = weighted / massG
  return { liquefactionNumber: mean, fallingNumberS: 6000 / mean + 50 }
}
