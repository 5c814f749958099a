import 'server-only'
import { enteredValue } from '../readings/entered-value'
import { Refusal } from '../refusal'

/** What a scale showed, g. Refuses as `enteredValue`, at the path of the mass in place of `value`. */
export function massEntered(value: string, unit: string, path: string): number {
  try {
    return enteredValue({ value, unit }, { unit: 'g' })
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    throw new Refusal(
      error.code,
      error.facts,
      error.problems.map((problem) => (problem.path === 'value' ? { ...problem, path } : problem)),
    )
  }
}
