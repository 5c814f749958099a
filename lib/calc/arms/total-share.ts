import { nutrientShare } from '../formula/nutrient-share'
import type { ArmLine, ArmTotal } from './types'

/**
 * Part of a line's mass that counts in a total; null when its composition does not state it. Fat, sugars and protein
 * count only in lines that stand in for them, so that the fat of a flour is not taken out as butter.
 */
export function totalShare(line: ArmLine, total: ArmTotal): number | null {
  switch (total) {
    case 'dough-mass':
      return 1
    case 'flour':
      return line.isFlour ? 1 : 0
    case 'water':
    case 'salt':
      return nutrientShare(line.composition, total)
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
