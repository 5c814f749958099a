import 'server-only'
import { decidingMeasures } from './deciding-measures'

type Measure = Parameters<typeof decidingMeasures>[0][number]

/**
 * The measures whose readings tell of a trial's primary one, by their ids. What a piece weighed before the oven tells
 * nothing of the loaf that is worked out with it.
 */
export function tellingMeasures(measures: readonly Measure[], primaryId: string): string[] {
  const atScaling = new Set(measures.filter(({ code }) => code === 'dough-mass').map(({ id }) => id))
  return [...decidingMeasures(measures, primaryId)].filter((id) => id === primaryId || !atScaling.has(id))
}
