import type { Composition, IngredientKind } from '../formula/types'

/** Totals that an arm can hold at the control's value. */
export type ArmTotal = 'dough-mass' | 'flour' | 'water' | 'fat' | 'sugars' | 'protein' | 'salt'

/** Constituents that only count where a line is marked for them: the fat in flour is no shortening, a raisin's water no dough water. */
export type StandIn = 'water' | 'fat' | 'sugars' | 'protein'

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

/** A line of the control that the arm itself lowers, raises or, at 0 g, leaves out. */
export type LineSet = { lineId: string; massG: number }

/** A line of the control that may move, and how far; its control mass lies within. */
export type LineMove = { lineId: string; minG: number; maxG: number | null }
