import { lineOffTarget } from '../../kitchen/conduct/line-off-target.input'

/** How a mass stands to what a line asks for; null for what takes as much as it takes. */
export type MassVerdict = { found: 'within' } | { found: 'over' | 'under'; byG: number } | { found: 'nothing' } | null

/** What the scale shows, judged by the book's own rule. */
export function judgeMass(q: { massG: number; targetG: number; toleranceG: number | null }): MassVerdict {
  const { massG, targetG, toleranceG } = q
  const found = lineOffTarget({ how: 'weighed', massG, targetG, toleranceG })
  if (found === 'left-out') return { found: 'nothing' }
  if (toleranceG === null) return null
  if (found === 'on-target') return { found: 'within' }
  return { found: massG > targetG ? 'over' : 'under', byG: Number(Math.abs(massG - targetG).toPrecision(12)) }
}
