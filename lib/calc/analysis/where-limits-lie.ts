import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import type { GoodDirection } from './gain-verdict'

/**
 * Where an interval lies against no difference and against what matters, each case with a claim of its own:
 * - `gain-that-matters`: certainly better, by what matters or more
 * - `gain-perhaps-matters`: certainly better; by what matters or more, and by less, are both still possible
 * - `small-gain`: certainly better, by less than matters
 * - `within-margin`: none is possible, and any difference is less than matters
 * - `none-to-gain-that-matters`: none and a gain that matters are both still possible, a loss that matters is not
 * - `none-to-loss-that-matters`: none and a loss that matters are both still possible, a gain that matters is not
 * - `anything`: a gain that matters, none, and a loss that matters are all still possible
 * - `small-loss`, `loss-perhaps-matters`, `loss-that-matters`: the same as of gains
 */
export type LimitsCase =
  | 'gain-that-matters'
  | 'gain-perhaps-matters'
  | 'small-gain'
  | 'within-margin'
  | 'none-to-gain-that-matters'
  | 'none-to-loss-that-matters'
  | 'anything'
  | 'small-loss'
  | 'loss-perhaps-matters'
  | 'loss-that-matters'

/**
 * Sorts an interval of a difference into the one case whose claim is true of it. A limit at zero leaves 'none' possible,
 * one at a margin is a difference that matters. *Possible* is what lies between the limits, the limits with it.
 * @param low, high limits of arm minus control, low ≤ high; null where that side is open
 * @param gain, loss smallest gain and loss that matter, both > 0, in the same unit (or on the same log scale)
 * @throws CalcError 'not-finite' | 'out-of-range'; 'wrong-shape' when low is above high; 'empty' when both are null
 * Source: definition; an interval against a margin as in ICH E9 (1998), section 3.3.
 * @example whereLimitsLie({ low: 0.8, high: 4.1, gain: 3, loss: 3, goodDirection: 'larger' }) // 'gain-perhaps-matters'
 */
export function whereLimitsLie(q: {
  low: number | null
  high: number | null
  gain: number
  loss: number
  goodDirection: GoodDirection
}): LimitsCase {
  const gain = mustBeWithin('gain', q.gain, { over: 0 })
  const loss = mustBeWithin('loss', q.loss, { over: 0 })
  if (q.low === null && q.high === null) throw new CalcError('empty', { field: 'low' })
  const low = q.low === null ? -Infinity : mustBeWithin('low', q.low)
  const high = q.high === null ? Infinity : mustBeWithin('high', q.high)
  if (low > high) throw new CalcError('wrong-shape', { field: 'low', value: low, max: high })
  const [worst, best] = q.goodDirection === 'larger' ? [low, high] : [-high, -low]

  if (worst > 0) {
    if (worst >= gain) return 'gain-that-matters'
    return best < gain ? 'small-gain' : 'gain-perhaps-matters'
  }
  if (best < 0) {
    if (best <= -loss) return 'loss-that-matters'
    return worst > -loss ? 'small-loss' : 'loss-perhaps-matters'
  }
  if (worst > -loss) return best < gain ? 'within-margin' : 'none-to-gain-that-matters'
  return best < gain ? 'none-to-loss-that-matters' : 'anything'
}
