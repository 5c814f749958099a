import { mustBeGiven } from '../checks'
import type { LossConvention } from './dough-mass-for-pieces'
import type { ScaleTarget } from './masses-from-percentages'

/** What to scale a formula to, as a form has it: one choice, and fields of which that choice needs some. */
export type FlatScaleTarget = {
  by: ScaleTarget['by']
  flourMassG?: number | undefined
  doughMassG?: number | undefined
  pieces?: number | undefined
  pieceMassG?: number | undefined
  lossShares?: readonly number[] | undefined
  lossesOn?: LossConvention['on'] | undefined
  lossesCombine?: LossConvention['combine'] | undefined
}

/** @throws CalcError 'not-possible' with reason 'not-given' and the field that the choice needs */
export function flatScaleTarget(q: FlatScaleTarget): ScaleTarget {
  switch (q.by) {
    case 'flour':
      return { by: 'flour', flourMassG: mustBeGiven('flourMassG', q.flourMassG) }
    case 'dough-mass':
      return { by: 'dough-mass', doughMassG: mustBeGiven('doughMassG', q.doughMassG) }
    case 'pieces': {
      const lossShares = q.lossShares ?? []
      // Without losses it makes no difference how they combine.
      const needed = <Choice>(field: string, choice: Choice | undefined, whatever: Choice) =>
        lossShares.length > 0 ? mustBeGiven(field, choice) : whatever
      return {
        by: 'pieces',
        pieces: mustBeGiven('pieces', q.pieces),
        pieceMassG: mustBeGiven('pieceMassG', q.pieceMassG),
        lossShares,
        losses: {
          on: needed('lossesOn', q.lossesOn, 'dough'),
          combine: needed('lossesCombine', q.lossesCombine, 'added'),
        },
      }
    }
    default:
      return q.by satisfies never
  }
}
