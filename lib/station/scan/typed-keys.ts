/** What has been typed in one go, and when its last sign came, ms. */
export type TypedKeys = { text: string; at: number }

export const nothingTyped: TypedKeys = { text: '', at: -Infinity }

/** A hand scanner types faster than this, and nobody types three signs and Enter so. */
const mostBetweenMs = 80
const leastSigns = 3
/** More is in no code that means anything here. */
const mostSigns = 400

/**
 * One key more: signs in one go, ended by Enter, are what a hand scanner has read.
 * @param key as `KeyboardEvent.key` names it
 * @param at ms, on the clock of the keys before
 */
export function typeKey(typed: TypedKeys, key: string, at: number): { typed: TypedKeys; scanned: string | null } {
  const before = at - typed.at <= mostBetweenMs ? typed.text : ''
  if (key === 'Enter') return { typed: nothingTyped, scanned: before.length >= leastSigns ? before : null }
  // Shift and the like come before the sign that they are for.
  const sign = Array.from(key).length === 1 ? key : ''
  return { typed: { text: `${before}${sign}`.slice(0, mostSigns), at }, scanned: null }
}
