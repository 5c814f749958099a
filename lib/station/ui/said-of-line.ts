import { stationMixing as words } from '../../words/en/station-mixing'
import type { LineStanding } from '../outbox/stand-of-line'
import type { MassWriter } from './masses'

/** What is written of a line: as planned, none of it, or so much. */
export function saidOfLine(
  { how, massG }: Pick<LineStanding, 'how' | 'massG'>,
  write: MassWriter,
  stepG: number,
): string {
  return how === 'weighed' ? write(massG ?? 0, stepG) : words.how[how]
}
