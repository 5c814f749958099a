import { mustBeWithin } from '../checks'
import type { NetWeightCaution } from './types'
import { usAllowableVariationG } from './us-allowable-variation'

const PARTS_OF_VARIATION = 6
const LEAST_DIVISIONS = 100

export type UsCheckScale = {
  variationG: number
  /** A sixth of the variation: the division may be no larger. */
  largestDivisionG: number
  /** Largest division of the usual steps 1, 2, 5 that is not above that. */
  usualDivisionG: number
  divisions: number
  isFineEnough: boolean
  hasEnoughDivisions: boolean
  isSuitable: boolean
  cautions: NetWeightCaution[]
}

/**
 * Whether a scale may be used to check packages in the United States: its division is at most a sixth of the allowed
 * variation of a package, and it has at least 100 divisions. Whether it is approved and verified is another question.
 * @param labelledG g, above 0 to 2630.8; divisionG g, over 0 to 1000; capacityG most it carries, g, at least the label
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: NIST Handbook 133 (2026), chapter 2; variations as usAllowableVariationG. Steps of 1, 2, 5: from memory.
 * @example 113 g: 7.2 g, a sixth is 1.2 g, so 1 g
 */
export function usCheckScale(q: { labelledG: number; divisionG: number; capacityG: number }): UsCheckScale {
  const { variationG, cautions } = usAllowableVariationG(q)
  const divisionG = mustBeWithin('divisionG', q.divisionG, { over: 0, max: 1000 })
  const capacityG = mustBeWithin('capacityG', q.capacityG, { min: q.labelledG, max: 1e9 })
  const largestDivisionG = variationG / PARTS_OF_VARIATION
  const divisions = mustBeWithin('divisionG', capacityG / divisionG)
  const isFineEnough = divisionG <= largestDivisionG * (1 + 1e-12)
  const hasEnoughDivisions = divisions >= LEAST_DIVISIONS * (1 - 1e-12)
  return {
    variationG,
    largestDivisionG,
    usualDivisionG: usualStepWithin(largestDivisionG),
    divisions,
    isFineEnough,
    hasEnoughDivisions,
    isSuitable: isFineEnough && hasEnoughDivisions,
    cautions: ['scale-must-be-verified', ...cautions],
  }
}

/** Largest of 1, 2, 5 times a power of ten that is not above a mass. */
function usualStepWithin(massG: number): number {
  const exponent = Math.floor(Math.log10(massG))
  const steps = [exponent - 1, exponent, exponent + 1].flatMap((tens) =>
    [1, 2, 5].map((digit) => Number(`${digit}e${tens}`)),
  )
  return Math.max(...steps.filter((stepG) => stepG <= massG * (1 + 1e-12)))
}
