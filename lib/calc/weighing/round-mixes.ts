import { mixStep } from './mix-step'
import type { DoseAim, MadePremix, ReadyScale } from './types'

/** Premix in parts per part of what is taken: usual dilutions that a baker can do by hand. */
const DILUTIONS = [2, 5, 10, 20, 50, 100] as const

/**
 * Premixes of one more step in round figures: 1, 2 or 5 times a power of ten taken, into a usual dilution.
 * @param before premix that is taken from; @returns some dozens, none beyond what can be mixed or carried
 * Source: the figures are our own choice.
 */
export function roundMixes(aim: DoseAim, scales: readonly ReadyScale[], before: MadePremix): MadePremix[] {
  const mostG = Math.min(before.totalG, aim.mostPremixG / DILUTIONS[0], Math.max(...scales.map((one) => one.capacityG)))
  // What is less than a step of the finest scale cannot be read off.
  const leastG = Math.max(aim.doseG / before.share, Math.min(...scales.map((one) => one.resolutionG)))
  return roundMasses(leastG, mostG).flatMap((takeG) =>
    DILUTIONS.filter((dilution) => takeG * dilution <= aim.mostPremixG).flatMap((dilution) => {
      const made = mixStep(scales, before, takeG, takeG * (dilution - 1))
      return made === null ? [] : [made]
    }),
  )
}

/** 1, 2 and 5 times powers of ten from `leastG` up to `mostG`. */
function roundMasses(leastG: number, mostG: number): number[] {
  const masses: number[] = []
  for (let power = Math.floor(Math.log10(leastG)); 10 ** power <= mostG; power++) {
    for (const digit of [1, 2, 5]) {
      const massG = Number((digit * 10 ** power).toPrecision(12))
      if (massG >= leastG * (1 - 1e-12) && massG <= mostG) masses.push(massG)
    }
  }
  return masses
}
