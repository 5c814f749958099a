/** Whether the long forms run: `npm run test:long`. */
export const isLong = process.env.EVENDOUGH_LONG === '1'

/** A number of runs, or a list of designs: the short one in `npm test`, the long one in `npm run test:long`. */
export function forLong<Value>(short: Value, long: Value): Value {
  return isLong ? long : short
}
