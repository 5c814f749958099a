/** Whether the long forms run: `npm run test:long`. */
export const isLong = process.env.EVENDOUGH_LONG === '1'

/** A number of runs: the short one in `npm test`, the long one in `npm run test:long`. */
export function forLong(short: number, long: number): number {
  return isLong ? long : short
}
