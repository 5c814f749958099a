import 'server-only'
import type { CalcEntry } from '../../calc/entry'
import { CalcError } from '../../calc/error'
import { problemsOfInput } from '../problems-of-input'
import { faultOfCalcError, type Fault } from './fault-of-calc-error'

export type WorkedOut = { ok: true; answer: unknown } | { ok: false; faults: readonly Fault[] }

/**
 * Runs a calculation of the catalogue on what somebody gave, whatever it is: the answer, or every fault at its field.
 * The answer is held to the shape that the entry states, in which a number is finite.
 * @throws Error when the calculation breaks: a bug
 */
export function workOut(entry: CalcEntry, given: unknown): WorkedOut {
  const read = entry.input.safeParse(given, { reportInput: true })
  if (!read.success) return { ok: false, faults: problemsOfInput(read.error) }
  try {
    return { ok: true, answer: entry.output.parse(entry.run(read.data)) }
  } catch (error) {
    if (!(error instanceof CalcError)) throw error
    return { ok: false, faults: [faultOfCalcError(error)] }
  }
}
