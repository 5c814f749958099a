/** How far off a line may be: a twentieth of a dose, a hundredth of anything else. The project's own rule. */
const doseShare = 0.05
const otherShare = 0.01

/**
 * How far what was weighed of a line may be off its target, g: 5 % of a dose and 1 % of anything else, and never less
 * than one step of the scale, because nobody can see less. Of a line that holds more than its dose the 5 % are of what
 * sets the doughs apart in it, so that no mass is on target for two kinds of dough unless the scale cannot tell them.
 * @param targetG ≥ 0
 * @param stepG steps of its scale, g, > 0
 * @param apartG of a dose: by how much the line differs between the dough and the control, g; for the control, and for a
 * dough that has as much, by how much the one nearest to it differs; null for a line that no dough is about
 */
export function toleranceOfLine(q: { targetG: number; stepG: number; apartG: number | null }): number {
  const share = q.apartG === null ? otherShare * q.targetG : doseShare * Math.min(q.targetG, q.apartG)
  return Math.max(share, q.stepG)
}
