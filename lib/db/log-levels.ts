import 'server-only'

/** How much is logged, from everything to nothing. */
export const logLevels = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'] as const
