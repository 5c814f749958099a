import 'server-only'
import { codesInAll, drawnCodes } from '../trials/drawn-codes'

/**
 * Codes for doughs that were not planned: the next ones of the draw that gave the plan its codes, without those that a
 * dough has already. Nobody chooses them, and they can be worked out again.
 * @param used codes of all doughs of the trial
 * @returns null where the draw has too few left
 */
export function nextCodes(q: { seed: string; used: readonly string[]; count: number }): string[] | null {
  if (q.count === 0) return []
  const used = new Set(q.used)
  const codes = drawnCodes(q.seed, codesInAll)
    .filter((code) => !used.has(code))
    .slice(0, q.count)
  return codes.length < q.count ? null : codes
}
