import 'server-only'
import { pino } from 'pino'

/** One JSON line an event, UTC. Never a secret, a PIN or the text of a note. */
export const log = pino({
  level: process.env.EVENDOUGH_LOG_LEVEL ?? 'info',
  base: undefined,
  timestamp: pino.stdTimeFunctions.isoTime,
})
