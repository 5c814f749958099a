import 'server-only'

type Measure = { id: string; code: string | null; derivation: string | null }

/** The measures that a trial's primary measure rests on: itself, and those that it is worked out of, by their ids. */
export function decidingMeasures(measures: readonly Measure[], primaryId: string): ReadonlySet<string> {
  const codes = new Set(measures.find(({ id }) => id === primaryId)?.derivation?.match(/[a-z]+(-[a-z]+)*/g))
  const outOf = measures.filter(({ code }) => code !== null && codes.has(code))
  return new Set([primaryId, ...outOf.map(({ id }) => id)])
}
