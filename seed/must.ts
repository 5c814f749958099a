import type { Result } from '../lib/kitchen/result'

/** The value of a command of the demo, which must not be refused. @throws Error that says why it was */
export function must<Value>(result: Result<Value>): Value {
  if (!result.ok)
    throw new Error(`the demo was refused: ${result.refusal.code} ${JSON.stringify(result.refusal.problems)}`)
  return result.value
}
