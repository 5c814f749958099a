import 'server-only'

/** What a plan gives to what is timed. */
export const plannedTimes = { mixTimeS: true, bulkTimeS: true, proofTimeS: true, bakeTimeS: true } as const

/** What is told of a step, to everybody alike. */
export const stepOnFloor = {
  id: true,
  step: true,
  isDone: true,
  at: true,
  receivedAt: true,
  setting: true,
  chamberTempC: true,
  place: true,
  setTempC: true,
  readTempC: true,
  steam: true,
  beside: true,
  supersedesId: true,
  person: { select: { id: true, name: true } },
} as const
