/** Whether the tests may take their time: more seeds and more designs, for `npm run test:long`. */
export const isLong = process.env.EVENDOUGH_LONG === '1'

/** The one or the other, by how long the tests may take. */
export function forLong<T>(short: T, long: T): T {
  return isLong ? long : short
}
