import 'server-only'
import { decidingMeasures } from './deciding-measures'

type Measure = { id: string; code: string | null; derivation: string | null }

/**
 * The measures of which one reading tells something of a trial's primary measure, by their ids. What a piece
 * weighed before the oven tells nothing of the loaf that is worked out with it.
 */
export function tellingMeasures(measures: readonly Measure[], primaryId: string): Set<string> {
  const atScaling = new Set(measures.filter(({ code }) => code === 'dough-mass').map(({ id }) => id))
  return new Set([...decidingMeasures(measures, primaryId)].filter((id) => id === primaryId || !atScaling.has(id)))
}
