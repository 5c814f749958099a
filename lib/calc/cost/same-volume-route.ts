import { mustBeWithin } from '../checks'
import { Decimal } from './decimal'
import { mustBeAmount } from './must-be-amount'

export type SameVolumeRoute = {
  /** Scaling mass at which the arm would give the control's volume, with the ends of the interval. */
  scalingMassG: number
  lowerScalingMassG: number
  upperScalingMassG: number
  lessDoughG: number
  controlPieceMinor: Decimal
  armPieceMinor: Decimal
  /** What a piece costs less; negative when it costs more. Lower and upper end follow the interval of the mass. */
  savedPerPieceMinor: Decimal
  lowerSavedPerPieceMinor: Decimal
  upperSavedPerPieceMinor: Decimal
  cautions: ('proposal-to-bake' | 'declared-weight' | 'ratio-below-one')[]
}

/**
 * The same-volume route: how much lighter a piece of the arm could be scaled so that it is as large as the control's,
 * if its volume goes with its mass. That is a proposal to bake, not a result: nobody has baked the arm at that mass.
 * m = M / (V_arm / V_control), and what a piece costs is its dough's cost per kg times its mass.
 * @param scalingMassG of both in the trial, g, > 0
 * @param volumeRatio arm over control as the analysis gives it, with its interval: 0.2 ≤ lower ≤ ratio ≤ upper ≤ 5
 * @param controlPerKgMinor, armPerKgMinor ingredient cost of a kg of dough, ≥ 0
 * @param hasDeclaredWeight bread sold by a declared weight: then the average-weight rules must still hold
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition; common practice, no source.
 */
export function sameVolumeRoute(q: {
  scalingMassG: number
  volumeRatio: number
  lowerVolumeRatio: number
  upperVolumeRatio: number
  controlPerKgMinor: Decimal
  armPerKgMinor: Decimal
  hasDeclaredWeight: boolean
}): SameVolumeRoute {
  mustBeWithin('scalingMassG', q.scalingMassG, { over: 0 })
  mustBeWithin('volumeRatio', q.volumeRatio, { min: 0.2, max: 5 })
  mustBeWithin('lowerVolumeRatio', q.lowerVolumeRatio, { min: 0.2, max: q.volumeRatio })
  mustBeWithin('upperVolumeRatio', q.upperVolumeRatio, { min: q.volumeRatio, max: 5 })
  mustBeAmount('controlPerKgMinor', q.controlPerKgMinor)
  mustBeAmount('armPerKgMinor', q.armPerKgMinor)
  const costOf = (perKgMinor: Decimal, massG: number) => perKgMinor.times(new Decimal(massG)).dividedBy(1000)
  const controlPieceMinor = costOf(q.controlPerKgMinor, q.scalingMassG)
  const at = (ratio: number) => {
    const massG = q.scalingMassG / ratio
    return { massG, pieceMinor: costOf(q.armPerKgMinor, massG) }
  }
  const [here, light, heavy] = [at(q.volumeRatio), at(q.upperVolumeRatio), at(q.lowerVolumeRatio)]
  const cautions: SameVolumeRoute['cautions'] = ['proposal-to-bake']
  if (q.hasDeclaredWeight) cautions.push('declared-weight')
  if (q.lowerVolumeRatio <= 1) cautions.push('ratio-below-one')
  return {
    scalingMassG: here.massG,
    lowerScalingMassG: light.massG,
    upperScalingMassG: heavy.massG,
    lessDoughG: q.scalingMassG - here.massG,
    controlPieceMinor,
    armPieceMinor: here.pieceMinor,
    savedPerPieceMinor: controlPieceMinor.minus(here.pieceMinor),
    lowerSavedPerPieceMinor: controlPieceMinor.minus(heavy.pieceMinor),
    upperSavedPerPieceMinor: controlPieceMinor.minus(light.pieceMinor),
    cautions,
  }
}
