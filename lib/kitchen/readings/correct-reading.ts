import 'server-only'
import { command } from '../command'
import { correctReadingInput } from './correct-reading.input'
import { keepOneReading } from './keep-one-reading'

/**
 * Puts a reading in the place of one that was wrong, with a reason; both stay. It keeps the time at which the wrong one
 * was taken. A shift baker corrects their own in the shift in which it was taken, head baker and owner any. Sent twice
 * under its id it is kept once, as in `logReading`.
 * Refuses: not-found, reading-clash, trial-closed, trial-stopped, correction-not-yours, stale, reading-there,
 * no-further-repeat, odd-reading, and what is wrong at a field.
 */
export const correctReading = command({
  name: 'readings.correct-reading',
  input: correctReadingInput,
  right: 'correct-reading',
  async run({ tx, actor, now, input }) {
    const { value, note } = await keepOneReading(tx, actor, now, input)
    return { value, audit: note && { target: input.supersedesId, ...note } }
  },
})
