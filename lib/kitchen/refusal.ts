import 'server-only'
import type { Facts } from '../words/text'
import type { ProblemCode, RefusalCode } from './messages'

/** What is wrong at one field, by its path in the input: `lines.2.massG`. */
export type Problem = { path: string; code: ProblemCode; facts: Facts }

/** An expected no: why, and at which fields. Words for it are in lib/words, keyed by the code. */
export class Refusal extends Error {
  readonly code: RefusalCode
  readonly facts: Facts
  readonly problems: readonly Problem[]

  constructor(code: RefusalCode, facts: Facts = {}, problems: readonly Problem[] = []) {
    super(code)
    this.name = 'Refusal'
    this.code = code
    this.facts = facts
    this.problems = problems
  }

  /** A refusal for one field. */
  static at(path: string, code: ProblemCode, facts: Facts = {}): Refusal {
    return new Refusal('invalid', {}, [{ path, code, facts }])
  }
}
