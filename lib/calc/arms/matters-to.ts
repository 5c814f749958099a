import { totalShare } from './total-share'
import type { ArmLine, ArmTotal } from './types'

/** A line matters to a total when it brings at least this part of it. */
const PART_OF_TOTAL = 0.1
/** … and when at least this part of the line is that total: nobody takes salt out of a dough as butter. */
const PART_OF_LINE = 0.1

/**
 * Whether a line of the control may move for a total: at least a tenth of the total is in it, and it is at least a
 * tenth that total. A line that the control has nothing of counts by the second alone.
 * @param controlG what the control has of the total, g
 * Source: common practice, no source.
 */
export function mattersTo(line: ArmLine, total: ArmTotal, controlG: number): boolean {
  const share = totalShare(line, total) ?? 0
  if (share < PART_OF_LINE) return false
  return line.massG === 0 || share * line.massG >= PART_OF_TOTAL * controlG
}
