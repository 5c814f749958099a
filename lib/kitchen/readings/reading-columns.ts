import 'server-only'

/** The columns that a device's question about a reading is answered from. */
export const readingColumns = {
  id: true,
  trialId: true,
  batchId: true,
  measureId: true,
  piece: true,
  factorLevel: true,
  repeat: true,
  value: true,
  contentHash: true,
  personId: true,
  takenAt: true,
  plausibleLeast: true,
  plausibleMost: true,
} as const

export const measureColumns = {
  id: true,
  code: true,
  name: true,
  unit: true,
  level: true,
  derivation: true,
  repeats: true,
  repeatLimit: true,
  plausibleLeast: true,
  plausibleMost: true,
} as const
