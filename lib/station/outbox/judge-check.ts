import { icePointC, judgeShown } from '../../kitchen/checks/judge-shown.input'
import type { FloorInstrument } from '../keep/facts'

type Check = Pick<FloorInstrument, 'kind' | 'offMost'> & {
  /** Plain numbers, in g, °C or °F. */
  mass: string | null
  shown: string
  unit: string
}

/**
 * Whether an instrument is near enough to what is known, how far it is off and may be, in the unit that it shows. The book
 * judges by the same rule.
 */
export function judgeCheck({ kind, offMost, mass, shown, unit }: Check) {
  const degrees = unit === '°F' ? 1.8 : 1
  const zero = unit === '°F' ? 32 : 0
  const shownInBase = kind === 'scale' ? Number(shown) : (Number(shown) - zero) / degrees
  const known = kind === 'scale' ? Number(mass) : icePointC
  const { off, isGood } = judgeShown({ shown: shownInBase, known, offMost })
  return { off: off * degrees, isGood, most: offMost * degrees }
}
