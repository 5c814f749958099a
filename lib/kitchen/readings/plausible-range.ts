import 'server-only'

export type PlausibleRange = { least: number; most: number }

type RangedMeasure = {
  id: string
  code: string | null
  unit: string
  level: 'batch' | 'piece'
  plausibleLeast: number
  plausibleMost: number
}

/** What the range of a reading goes by, beside its measure. */
export type RangeFacts = {
  /** Of the plan, g a piece; null where nothing goes by it. */
  scalingMassG: number | null
  /** Water of the final dough that the plan weighs in, g, by the position of the arm. */
  plannedWaterG: ReadonlyMap<number, number>
  /** Volume that recent doughs of the product had, mL for each g of scaling weight, by the measure's id. */
  usualMlPerG: ReadonlyMap<string, number>
}

/** How far a figure may lie from what is expected of it before the book asks: common practice, no source. */
const roomShare = 0.5

/** Of the expected figure that a range is put around; `own` is the measure's own range. */
export function basisOfRange({
  code,
  unit,
  level,
}: Pick<RangedMeasure, 'code' | 'unit' | 'level'>): 'scaling' | 'water' | 'recent' | 'own' {
  if (code === 'dough-mass' || code === 'loaf-mass') return 'scaling'
  if (code === 'water-added') return 'water'
  return unit === 'mL' && level === 'piece' ? 'recent' : 'own'
}

/**
 * The range in which a reading is taken without asking, in the measure's base unit, ends included, in whole g or mL
 * where the plan or recent doughs say it: half to one and a half times the planned scaling weight for the weight of a
 * piece, the planned water for water, the volume of recent doughs for a volume. Where nothing is known, and for
 * everything else, the measure's own range. It is the same for all doughs of a trial, from the driest to the wettest:
 * a range of its own would tell what a code stands for.
 */
export function plausibleRange(measure: RangedMeasure, facts: RangeFacts): PlausibleRange {
  const expected = expectedOf(measure, facts).filter((each) => each > 0)
  if (expected.length === 0) return { least: measure.plausibleLeast, most: measure.plausibleMost }
  return {
    least: Math.floor(Math.min(...expected) * (1 - roomShare)),
    most: Math.ceil(Math.max(...expected) * (1 + roomShare)),
  }
}

function expectedOf(measure: RangedMeasure, { scalingMassG, plannedWaterG, usualMlPerG }: RangeFacts): number[] {
  const basis = basisOfRange(measure)
  switch (basis) {
    case 'scaling':
      return scalingMassG === null ? [] : [scalingMassG]
    case 'water':
      return [...plannedWaterG.values()]
    case 'recent': {
      const usual = usualMlPerG.get(measure.id)
      return usual === undefined || scalingMassG === null ? [] : [usual * scalingMassG]
    }
    case 'own':
      return []
    default:
      return basis satisfies never
  }
}
