import 'server-only'
import { setTimeout as wait } from 'node:timers/promises'

/**
 * Holds an answer back until a time from now, if it is one that should not tell how long it took.
 * @param ms at least so long; @param isHeld whether this answer is held back
 * @throws what the answer throws, held back as well
 */
export async function noSooner<Answer>(
  ms: number,
  answer: Promise<Answer>,
  isHeld: (answer: Answer) => boolean,
  waiting: (ms: number) => Promise<unknown> = wait,
): Promise<Answer> {
  const held = waiting(ms)
  try {
    const given = await answer
    if (isHeld(given)) await held
    return given
  } catch (error) {
    await held
    throw error
  }
}
