import 'server-only'
import { command } from '../command'
import { keepOneReading } from './keep-one-reading'
import { logReadingInput } from './log-reading.input'

/**
 * Puts one reading in the book. Its id is the device's own: the same id with the same content is answered the same and
 * kept once, also after the trial was closed; the same id with other content is refused and nothing is overwritten. A
 * value outside its plausible range is kept when it comes confirmed.
 * Refuses: not-found, reading-clash, trial-not-approved, trial-closed, trial-stopped, batch-not-begun, reading-there,
 * no-further-repeat, odd-reading, and what is wrong at a field.
 */
export const logReading = command({
  name: 'readings.log-reading',
  input: logReadingInput,
  right: 'log-reading',
  async run({ tx, actor, now, input }) {
    const { value, note } = await keepOneReading(tx, actor, now, input)
    return { value, audit: note && { target: input.id, ...note } }
  },
})
