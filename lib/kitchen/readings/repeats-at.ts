import 'server-only'
import { takesRepeat } from './takes-repeat.input'

/** The readings of one thing that are there or wanted, in their order; a further one where two disagree. */
export function repeatsAt<Reading extends { repeat: number; value: number }>(
  readings: readonly Reading[],
  measure: { repeats: number; repeatLimit: number | null },
): { repeat: number; reading: Reading | null }[] {
  const last = Math.max(0, ...readings.map(({ repeat }) => repeat))
  const isFurther = last >= measure.repeats && takesRepeat(last + 1, measure, readings)
  return numbersTo(Math.max(measure.repeats, isFurther ? last + 1 : last)).map((repeat) => ({
    repeat,
    reading: readings.find((each) => each.repeat === repeat) ?? null,
  }))
}

/** What a measure is read on: the whole dough, which is null, or each of its pieces. */
export function piecesOf({ level }: { level: 'batch' | 'piece' }, pieces: number): (number | null)[] {
  return level === 'batch' ? [null] : numbersTo(pieces)
}

function numbersTo(count: number): number[] {
  return Array.from({ length: count }, (_, at) => at + 1)
}
