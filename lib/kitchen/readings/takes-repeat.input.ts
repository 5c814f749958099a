import { mayReadAgain } from '../conduct/may-read-again.input'
import { settleRepeats } from './settle-repeats.input'

/** Whether a place takes a further reading, by what holds there; however it comes: from the desk, a device or a file. */
export function takesRepeat(
  repeat: number,
  { repeats, repeatLimit }: { repeats: number; repeatLimit: number | null },
  atPlace: readonly { repeat: number; value: number }[],
): boolean {
  const values = [...atPlace].sort((a, b) => a.repeat - b.repeat).map(({ value }) => value)
  const needs = values.length === 0 ? 'repeat' : settleRepeats({ values, repeats, repeatLimit }).needs
  return mayReadAgain({ needs, repeat, repeats })
}
