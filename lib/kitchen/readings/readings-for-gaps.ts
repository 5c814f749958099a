import 'server-only'

/** The columns of readings that `gapsOfBatch` looks at, and those by which corrections are followed. */
export const readingsForGaps = {
  id: true,
  batchId: true,
  measureId: true,
  piece: true,
  factorLevel: true,
  repeat: true,
  value: true,
  plausibleLeast: true,
  plausibleMost: true,
  supersedesId: true,
  receivedAt: true,
} as const
