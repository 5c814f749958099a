import 'server-only'

/**
 * What our own code has put there, so that a miss is a fault of ours and of nobody who asks.
 * @param what it is, for the log
 * @throws Error when it is not there
 */
export function sureOf<Value>(value: Value | null | undefined, what: string): Value {
  if (value === null || value === undefined) throw new Error(`not there: ${what}`)
  return value
}
