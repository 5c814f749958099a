import type { Words } from './words'

export type NeededKey = keyof Words['formulas']['sign']['needs']

/** Under which key the words stand for those whose signatures are meant: one, or the owner and the head baker; null for nobody. */
export function neededKey(needed: readonly Exclude<NeededKey, 'both'>[]): NeededKey | null {
  return needed.length > 1 ? 'both' : (needed[0] ?? null)
}
