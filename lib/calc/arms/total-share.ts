import { nutrientShare } from '../formula/nutrient-share'
import type { ArmLine, ArmTotal } from './types'

/**
 * Part of a line's mass that counts in a total; null when its composition does not state it. Water, fat, sugars and
 * protein count only in lines that are marked for them, so that the fat of a flour is not taken out as butter, nor the
 * water of raisins as dough water. Salt counts in every line.
 */
export function totalShare(line: ArmLine, total: ArmTotal): number | null {
  switch (total) {
    case 'dough-mass':
      return 1
    case 'flour':
      return line.isFlour ? 1 : 0
    case 'salt':
      return nutrientShare(line.composition, total)
    case 'water':
    case 'fat':
    case 'sugars':
    case 'protein':
      return line.standsInFor.includes(total) ? nutrientShare(line.composition, total) : 0
    default: {
      const never: never = total
      return never
    }
  }
}
