import 'server-only'

/** The columns from which follows where a version stands. */
export const versionTimes = { id: true, number: true, signedAt: true, effectiveAt: true, discardedAt: true } as const
