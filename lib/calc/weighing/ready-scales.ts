import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { netWeightUncertaintyG } from './net-weight-uncertainty'
import type { ReadyScale, Scale } from './types'

/** No scale is finer, or carries more: bounds that keep a search over marks finite. */
const LEAST_RESOLUTION_G = 1e-6
const MOST_CAPACITY_G = 1e8

/**
 * Scales by their uncertainty, without those that a better one outdoes in what it carries.
 * @param scales at least one, each with its own id; resolution ≥ 1 µg, capacity > 0 to 100 t, repeatability ≥ 0 g
 * @throws CalcError 'empty' | 'duplicate' | 'not-finite' | 'out-of-range'
 * Source: netWeightUncertaintyG.
 */
export function readyScales(scales: readonly Scale[]): ReadyScale[] {
  mustHaveAtLeast('scales', scales, 1)
  const ids = new Set<string>()
  const read = scales.map((scale, i) => {
    if (ids.has(scale.id)) throw new CalcError('duplicate', { field: `scales[${i}].id`, value: scale.id })
    ids.add(scale.id)
    mustBeWithin(`scales[${i}].capacityG`, scale.capacityG, { over: 0, max: MOST_CAPACITY_G })
    mustBeWithin(`scales[${i}].resolutionG`, scale.resolutionG, { min: LEAST_RESOLUTION_G })
    mustBeWithin(`scales[${i}].repeatabilityG`, scale.repeatabilityG, { min: 0 })
    const { id, resolutionG, capacityG } = scale
    return { id, resolutionG, capacityG, uncertaintyG: netWeightUncertaintyG(scale) }
  })
  read.sort((a, b) => a.uncertaintyG - b.uncertaintyG || b.capacityG - a.capacityG)
  return read.filter((scale, i) => read.slice(0, i).every((better) => better.capacityG < scale.capacityG))
}
