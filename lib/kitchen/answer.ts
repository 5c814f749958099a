import 'server-only'
import { type z } from 'zod'
import { DatabaseAway, UnknownOutcome } from '../db/transaction'
import { readDatabaseFault } from '../db/errors'
import { problemsOfInput } from './problems-of-input'
import { Refusal } from './refusal'
import type { Result } from './result'
import { refusalOfConstraint } from './constraint-refusals'

/** Parses an input or refuses it with every fault at its field. */
export function parseOrRefuse<Schema extends z.ZodType>(schema: Schema, raw: unknown): z.output<Schema> {
  const read = schema.safeParse(raw, { reportInput: true })
  if (!read.success) throw new Refusal('invalid', {}, problemsOfInput(read.error))
  return read.data
}

/** Runs the work and turns what is expected to go wrong into a refusal; a bug goes on as an exception. */
export async function answer<Value>(work: () => Promise<{ value: Value }>): Promise<Result<Value>> {
  try {
    return { ok: true, ...(await work()) }
  } catch (error) {
    const refusal = refusalOf(error)
    if (!refusal) throw error
    return { ok: false, refusal: { code: refusal.code, facts: refusal.facts, problems: refusal.problems } }
  }
}

function refusalOf(error: unknown): Refusal | undefined {
  if (error instanceof Refusal) return error
  if (error instanceof UnknownOutcome) return new Refusal('outcome-unknown')
  if (error instanceof DatabaseAway) return new Refusal('away')
  const fault = readDatabaseFault(error)
  if (fault.kind === 'unique' || fault.kind === 'foreign-key') return refusalOfConstraint(fault.constraint)
  if (fault.kind === 'gone' || fault.kind === 'busy' || fault.kind === 'clash') return new Refusal('away')
  return undefined
}
