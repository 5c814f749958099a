/** At what age out of the oven a measure is read, h. Without a begin at any age; without an end at any later one. */
export type AgeWindow = { ageLeastH: number | null; ageMostH: number | null }

/** When a reading falls due, in ms as a clock says them. */
export type Due =
  | { when: 'later'; from: number }
  | { when: 'now'; until: number | null }
  /** It can be taken all the same, and says that it was. */
  | { when: 'late'; since: number }

const hourMs = 60 * 60_000

/** When readings of a measure on one dough fall due. @returns null where no age is declared, or nobody said when it was baked */
export function dueByAge({ ageLeastH, ageMostH }: AgeWindow, bakedAt: number | null, now: number): Due | null {
  if (ageLeastH === null || bakedAt === null) return null
  const from = bakedAt + ageLeastH * hourMs
  const until = ageMostH === null ? null : bakedAt + ageMostH * hourMs
  if (now < from) return { when: 'later', from }
  return until !== null && now > until ? { when: 'late', since: until } : { when: 'now', until }
}

/** Whether a reading was taken at another age than is declared; null where it was not, or nobody can say. */
export function offAge(window: AgeWindow, bakedAt: number | null, takenAt: number): 'early' | 'late' | null {
  const due = dueByAge(window, bakedAt, takenAt)
  if (due === null || due.when === 'now') return null
  return due.when === 'later' ? 'early' : 'late'
}
