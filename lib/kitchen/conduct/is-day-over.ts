import 'server-only'
import { bakeryDay, type BakeryClock } from '../bakery-day'

/** A shift that began in the evening goes on after midnight, and its mixing day with it. The project's own rule. */
export const shiftMs = 12 * 60 * 60_000

/**
 * Whether a mixing day has passed, so that a dough baked from now on would be of another day. A day of which a dough is
 * begun is when that was, whatever date was written for it; one without either is still to come.
 * @param date that was written for it, YYYY-MM-DD
 * @param lastBegunAt when its last dough was begun
 */
export function isDayOver(q: {
  date: string | null
  lastBegunAt: Date | null
  now: Date
  clock: BakeryClock
}): boolean {
  const { date, lastBegunAt, now, clock } = q
  const today = bakeryDay(now, clock)
  if (lastBegunAt === null) return date !== null && date < today
  return bakeryDay(lastBegunAt, clock) < today && now.getTime() - lastBegunAt.getTime() > shiftMs
}
