import 'server-only'
import { Refusal } from '../refusal'
import type { PlausibleRange } from './plausible-range'

/**
 * Refuses a value outside its range that nobody confirmed: odd-reading. A confirmation says nothing of a value within
 * it, so one that is sent with everything marks nothing and hides nothing: what is outside is told by the range.
 */
export function mustBeConfirmed(
  value: number,
  { least, most }: PlausibleRange,
  unit: string,
  isConfirmed: boolean,
): void {
  if (isConfirmed || (value >= least && value <= most)) return
  const facts = { least, most, unit }
  throw new Refusal('odd-reading', facts, [{ path: 'value', code: 'outside-usual', facts }])
}
