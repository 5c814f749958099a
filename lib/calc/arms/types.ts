import type { Composition, IngredientKind } from '../formula/types'

/** Totals that an arm can hold at the control's value. */
export type ArmTotal = 'dough-mass' | 'flour' | 'water' | 'fat' | 'sugars' | 'protein' | 'salt'

/** Nutrients that only count where a line stands in for them: the fat in flour is no shortening. */
export type StandIn = 'fat' | 'sugars' | 'protein'

export type ArmLine = {
  id: string
  massG: number
  kind: IngredientKind
  isFlour: boolean
  composition: Composition | null
  standsInFor: readonly StandIn[]
  /** Resolution of the scale that weighs this line, g; 0 when changes of any size count. */
  resolutionG: number
}

/** A line of the control that may move, and how far; its control mass lies within. */
export type LineMove = { lineId: string; minG: number; maxG: number | null }
