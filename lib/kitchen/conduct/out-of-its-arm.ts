import 'server-only'
import type { LineFound } from './line-off-target.input'

/**
 * Whether a dough is not one of its kind any more, by what was weighed for it: a dose is off, or a line was left out. Any
 * other line that is off makes a worse dough of the kind that it is, and is listed. It is a rule and nobody's choice.
 */
export function outOfItsArm(lines: readonly { isDose: boolean; found: LineFound }[]): boolean {
  return lines.some(({ isDose, found }) => found === 'left-out' || (isDose && found === 'off'))
}
