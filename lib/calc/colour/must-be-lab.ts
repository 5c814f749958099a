import { mustBeWithin } from '../checks'
import type { Lab } from './types'

const FARTHEST = 200

/**
 * Demands a colour that can be one: lightness 0 to 100, a and b within ±200.
 * @param field ending that the fields carry, '1' for the first of two colours, '' for a single one
 * @throws CalcError 'not-finite' | 'out-of-range'
 */
export function mustBeLab(ending: string, colour: Lab): Lab {
  mustBeWithin(`lightness${ending}`, colour.lightness, { min: 0, max: 100 })
  mustBeWithin(`a${ending}`, colour.a, { min: -FARTHEST, max: FARTHEST })
  mustBeWithin(`b${ending}`, colour.b, { min: -FARTHEST, max: FARTHEST })
  return colour
}
