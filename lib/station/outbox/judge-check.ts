import { icePointC, judgeShown, offMostOfGauge } from '../../kitchen/checks/judge-shown.input'
import type { FloorInstrument } from '../keep/facts'

type Check = Pick<FloorInstrument, 'kind' | 'offMost'> & {
  /** Of the test weight or the block; null for ice. Plain numbers, in g, mL, °C or °F. */
  known: string | null
  shown: string
  unit: string
}

/**
 * Whether an instrument is near enough to what is known, how far it is off and may be, in the unit that it shows. The book
 * judges by the same rule.
 */
export function judgeCheck({ kind, offMost, known: typed, shown, unit }: Check) {
  const degrees = unit === '°F' ? 1.8 : 1
  const zero = unit === '°F' ? 32 : 0
  const isInIce = kind === 'thermometer'
  const shownInBase = isInIce ? (Number(shown) - zero) / degrees : Number(shown)
  const known = isInIce ? icePointC : Number(typed)
  const most = offMost ?? offMostOfGauge({ offMostMl: null, blockMl: known })
  const { off, isGood } = judgeShown({ shown: shownInBase, known, offMost: most })
  return { off: off * degrees, isGood, most: most * degrees }
}
