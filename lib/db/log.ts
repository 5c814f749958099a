import 'server-only'
import { pino } from 'pino'
import { logLevels } from './log-levels'

const wanted = process.env.EVENDOUGH_LOG_LEVEL

/** One JSON line an event, UTC. Never a secret, a PIN or the text of a note. A level that is none stops the start. */
export const log = pino({
  level: logLevels.find((level) => level === wanted) ?? 'info',
  base: undefined,
  timestamp: pino.stdTimeFunctions.isoTime,
})
