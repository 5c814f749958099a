import { CalcError } from './error'

/**
 * Hands an answer on when every number in it is finite: NaN and infinity are no answers, and JSON cannot write them.
 * Only figures beyond what a double holds lead there, so the field with the largest figure is named.
 * @throws CalcError 'not-possible' with reason 'beyond-numbers'
 */
export function finiteAnswer<Answer>(question: Readonly<Record<string, unknown>>, answer: Answer): Answer {
  if (numbersIn(answer).every(Number.isFinite)) return answer
  const largest = Object.entries(question)
    .map(([field, value]) => ({ field, size: Math.max(0, ...numbersIn(value).slice(0, 1000).map(Math.abs)) }))
    .sort((a, b) => b.size - a.size)[0]
  throw new CalcError('not-possible', { field: largest?.field ?? '', reason: 'beyond-numbers' })
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(numbersIn)
}
