import { CalcError } from '../error'

/**
 * Runs a step whose matrices are definite unless the rows do not settle its question, and then says so of the rows.
 * @param reason of the refusal; @param run the step
 * @throws CalcError 'not-possible' with field 'rows' and the reason, for 'not-definite'; any other error as it is
 */
export function refuseIndefinite<Result>(reason: string, run: () => Result): Result {
  try {
    return run()
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'not-definite')
      throw new CalcError('not-possible', { field: 'rows', reason })
    throw error
  }
}
