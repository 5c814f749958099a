import type { Facts } from '../words/text'
import type { ProblemCode, RefusalCode } from './messages'

export type Refused = {
  code: RefusalCode
  facts: Facts
  problems: readonly { path: string; code: ProblemCode; facts: Facts }[]
}

/** What every command and query answers. Nothing expected leaves them as an exception. */
export type Result<Value> = { ok: true; value: Value } | { ok: false; refusal: Refused }
