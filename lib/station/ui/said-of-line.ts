import { stationMixing as words } from '../../words/en/station-mixing'
import type { LineStanding } from '../outbox/stand-of-line'
import type { MassWriter } from './masses'
import { valueWithLots } from './value-with-lots'

/** What is written of a line: as planned, none of it, or so much, and of which lots. */
export function saidOfLine(
  { how, massG, lots }: Pick<LineStanding, 'how' | 'massG' | 'lots'>,
  write: MassWriter,
  stepG: number,
): string {
  return valueWithLots(how === 'weighed' ? write(massG ?? 0, stepG) : words.how[how], lots)
}
