import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { mustBeSameActivity } from './must-be-same-activity'
import type { ActiveStrength } from './types'

/**
 * Mass of one source that brings as much active substance as a mass of another.
 * @param massG mass of the first source, g, ≥ 0
 * @returns mass of the second, g, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'different-substance', or
 *   'dose-by-effect' when an activity is to be set against a mass share or against another assay
 * Source: mass balance; common practice, no source.
 * @example 100 g at 63 % against a source at 96 %: 65.625 g
 */
export function equalActiveMassG(q: { massG: number; from: ActiveStrength; to: ActiveStrength }): number {
  mustBeWithin('massG', q.massG, { min: 0 })
  const from = activePerG('from', q.from)
  const to = activePerG('to', q.to)
  if (q.from.by === 'share' && q.to.by === 'share') {
    if (q.from.substance !== q.to.substance) {
      throw new CalcError('not-possible', {
        field: 'to.substance',
        value: q.to.substance,
        reason: 'different-substance',
      })
    }
  } else if (q.from.by === 'activity' && q.to.by === 'activity') {
    mustBeSameActivity('to.activity', q.from.activity, q.to.activity)
  } else {
    throw new CalcError('not-possible', { field: 'to.by', value: q.to.by, reason: 'dose-by-effect' })
  }
  return (q.massG * from) / to
}

function activePerG(field: string, strength: ActiveStrength): number {
  const strengthShare = mustBeWithin(`${field}.strengthShare`, strength.strengthShare, { over: 0, max: 1 })
  switch (strength.by) {
    case 'share':
      return mustBeWithin(`${field}.activeShare`, strength.activeShare, { over: 0, max: 1 }) * strengthShare
    case 'activity':
      return mustBeWithin(`${field}.unitsPerG`, strength.unitsPerG, { over: 0 }) * strengthShare
    default: {
      const never: never = strength
      return never
    }
  }
}
