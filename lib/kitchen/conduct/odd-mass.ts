import 'server-only'

/** A mass this many times beyond what any dough of the trial has on the line was typed in another unit, or is a slip. The project's own rule. */
const oddTimes = 3
/** And one this small part of what any dough has. */
const oddShare = 0.01

/**
 * Whether a mass is so far from what any dough of its trial has of a line that grams and kilograms were mixed up, or it
 * is a slip. It goes by all doughs together: one range for each would tell the code.
 * @param massG ≥ 0; nothing at all is no slip of the unit
 * @param targetsG of all kinds of dough, at least one > 0
 */
export function isOddMass(massG: number, targetsG: readonly number[]): boolean {
  const some = targetsG.filter((targetG) => targetG > 0)
  return massG > 0 && (massG > oddTimes * Math.max(...some) || massG < oddShare * Math.min(...some))
}
