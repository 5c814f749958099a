/** Why a calculation refused its input. Words for people are made from this code in lib/words. */
export type CalcErrorCode =
  | 'not-finite'
  | 'out-of-range'
  | 'empty'
  | 'wrong-shape'
  | 'duplicate'
  | 'not-possible'
  | 'no-convergence'

export type CalcErrorFacts = {
  /** Name of the argument at fault, with its unit ending, and an index where it is a list: `lines[2].massG`. */
  field: string
  value?: number | string
  min?: number
  max?: number
  /** A machine word for the reason where one code has several: `no-movable-fat`. */
  reason?: string
}

/** The one error that lib/calc throws: a code, the field and the facts, never a sentence. */
export class CalcError extends Error {
  readonly code: CalcErrorCode
  readonly facts: CalcErrorFacts

  constructor(code: CalcErrorCode, facts: CalcErrorFacts) {
    super(`${code}: ${JSON.stringify(facts)}`)
    this.name = 'CalcError'
    this.code = code
    this.facts = facts
  }
}
