import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { netWeightUncertaintyG } from './net-weight-uncertainty'
import type { Scale } from './types'

/** One mixing step: `takeG` of what the step before made (of the product itself in the first) into `carrierG`. */
export type PremixStep = {
  takeG: number
  takeScaleId: string
  carrierG: number
  carrierScaleId: string
  totalG: number
  /** Product in the premix. */
  productShare: number
}

export type WeighingRoute = {
  outcome: 'direct' | 'premix'
  steps: PremixStep[]
  /** What goes into the dough, not rounded: the dose itself, or that mass of the last premix. */
  portionG: number
  portionScaleId: string
  /** Carrier that comes with it and is taken off the formula's flour or water. */
  carrierInPortionG: number
  /** Of the dose, at the coverage factor asked for. */
  errorShare: number
  /** Premix made up, over all steps. */
  premixMadeG: number
  /** Product that is weighed and not used. */
  productLeftG: number
}

export type PremixPlan = WeighingRoute | { outcome: 'not-possible'; bestErrorShare: number | null }

/** Premix in parts per part of what is taken: usual dilutions that a baker can do by hand. */
const DILUTIONS = [2, 5, 10, 20, 50, 100] as const
const MOST_STEPS = 3
/** A microgram: below it the search would go through masses that nobody can weigh. */
const LEAST_DOSE_G = 1e-6

/**
 * Finds how to weigh a small dose within a relative error: directly, or through a premix of one or more steps in flour
 * or water. Fewest steps first; then least premix made up in all, then least error. Masses taken are whole 1, 2 or 5 times a
 * power of ten, so that they can be read off.
 * Errors of every weighing are carried through: with shares w = take/(take + carrier),
 * (u_w/w)² = (1 − w)² · ((u_take/take)² + (u_carrier/carrier)²), and relative variances of steps and portion add up.
 * A premix is taken as evenly mixed; that is the mixer's part of the error and is not in the figure.
 * @param doseG product for one dough, g, ≥ 1e-6 (a microgram)
 * @param errorShare relative error allowed, 0 < e < 1, at coverageFactor k > 0
 * @param scales at least one; each mass goes on the one with the least uncertainty that can carry it
 * @param mostCarrierG carrier that the formula can give up for one dough, g, ≥ 0
 * @param mostPremixG largest premix that can be mixed evenly, g, > 0
 * @throws CalcError 'empty' | 'duplicate' | 'not-finite' | 'out-of-range'
 * Source: law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2; the search is our own.
 */
export function planPremix(q: {
  doseG: number
  errorShare: number
  coverageFactor: number
  scales: readonly Scale[]
  mostCarrierG: number
  mostPremixG: number
}): PremixPlan {
  mustBeWithin('doseG', q.doseG, { min: LEAST_DOSE_G })
  mustBeWithin('errorShare', q.errorShare, { over: 0, under: 1 })
  mustBeWithin('coverageFactor', q.coverageFactor, { over: 0 })
  mustBeWithin('mostCarrierG', q.mostCarrierG, { min: 0 })
  mustBeWithin('mostPremixG', q.mostPremixG, { over: 0 })
  const ready = readyScales(q.scales)

  const direct = weigh(ready, q.doseG)
  let best: number | null = null
  if (direct !== null) {
    best = q.coverageFactor * direct.relative
    if (best <= q.errorShare) {
      return {
        outcome: 'direct',
        steps: [],
        portionG: q.doseG,
        portionScaleId: direct.scaleId,
        carrierInPortionG: 0,
        errorShare: best,
        premixMadeG: 0,
        productLeftG: 0,
      }
    }
  }
  let made: Made[] = [{ steps: [], share: 1, variance: 0, totalG: Infinity, productG: 0, madeG: 0 }]
  for (let count = 1; count <= MOST_STEPS; count++) {
    made = bestOfAlike(made.flatMap((before) => nextSteps(q, ready, before)))
    let found: WeighingRoute | undefined
    for (const one of made) {
      const portionG = q.doseG / one.share
      const carrierInPortionG = portionG * (1 - one.share)
      const portion = weigh(ready, portionG)
      if (portion === null || portionG > one.totalG * (1 + 1e-12) || carrierInPortionG > q.mostCarrierG) continue
      const errorShare = q.coverageFactor * Math.sqrt(one.variance + portion.relative ** 2)
      if (best === null || errorShare < best) best = errorShare
      if (errorShare > q.errorShare) continue
      const route: WeighingRoute = {
        outcome: 'premix',
        steps: one.steps,
        portionG,
        portionScaleId: portion.scaleId,
        carrierInPortionG,
        errorShare,
        premixMadeG: one.madeG,
        productLeftG: one.productG - q.doseG,
      }
      if (found === undefined || isBetter(route, found)) found = route
    }
    if (found !== undefined) return found
    // Further weighings only add to the error: what is already past both the target and the best so far leads nowhere.
    const hopeless = Math.max(q.errorShare, best ?? Infinity)
    made = made.filter((one) => q.coverageFactor * Math.sqrt(one.variance) < hopeless)
  }
  return { outcome: 'not-possible', bestErrorShare: best }
}

/** Less premix to make up, or as little of it and less error. */
function isBetter(a: WeighingRoute, b: WeighingRoute): boolean {
  const moreG = a.premixMadeG - b.premixMadeG
  return Math.abs(moreG) > 1e-9 ? moreG < 0 : a.errorShare < b.errorShare
}

/** Of premixes alike in content, size and premix made before, only the best weighed one can be of use. */
function bestOfAlike(made: readonly Made[]): Made[] {
  const best = new Map<string, Made>()
  for (const one of made) {
    const key = [one.share, one.totalG, one.madeG].map((value) => value.toPrecision(10)).join(' ')
    const held = best.get(key)
    if (held === undefined || one.variance < held.variance) best.set(key, one)
  }
  return [...best.values()]
}

type ReadyScale = { id: string; capacityG: number; uncertaintyG: number }
type Made = { steps: PremixStep[]; share: number; variance: number; totalG: number; productG: number; madeG: number }

function readyScales(scales: readonly Scale[]): ReadyScale[] {
  mustHaveAtLeast('scales', scales, 1)
  const ids = new Set<string>()
  return scales
    .map((scale, i) => {
      if (ids.has(scale.id)) throw new CalcError('duplicate', { field: `scales[${i}].id`, value: scale.id })
      ids.add(scale.id)
      mustBeWithin(`scales[${i}].capacityG`, scale.capacityG, { over: 0 })
      return { id: scale.id, capacityG: scale.capacityG, uncertaintyG: netWeightUncertaintyG(scale) }
    })
    .sort((a, b) => a.uncertaintyG - b.uncertaintyG)
}

/** The finest scale that can carry the mass, and the relative standard uncertainty there. */
function weigh(scales: readonly ReadyScale[], massG: number): { scaleId: string; relative: number } | null {
  const scale = scales.find((one) => one.capacityG >= massG)
  return scale === undefined ? null : { scaleId: scale.id, relative: scale.uncertaintyG / massG }
}

function nextSteps(q: Parameters<typeof planPremix>[0], scales: readonly ReadyScale[], before: Made): Made[] {
  const next: Made[] = []
  const leastG = q.doseG / before.share
  for (const takeG of readableMasses(leastG, Math.min(before.totalG, q.mostPremixG / DILUTIONS[0]))) {
    const take = weigh(scales, takeG)
    if (take === null) continue
    for (const dilution of DILUTIONS) {
      const totalG = takeG * dilution
      const carrierG = totalG - takeG
      const carrier = weigh(scales, carrierG)
      if (totalG > q.mostPremixG || carrier === null) continue
      const part = 1 / dilution
      const share = before.share * part
      next.push({
        steps: [
          ...before.steps,
          { takeG, takeScaleId: take.scaleId, carrierG, carrierScaleId: carrier.scaleId, totalG, productShare: share },
        ],
        share,
        variance: before.variance + (1 - part) ** 2 * (take.relative ** 2 + carrier.relative ** 2),
        totalG,
        productG: before.steps.length === 0 ? takeG : before.productG,
        madeG: before.madeG + totalG,
      })
    }
  }
  return next
}

/** 1, 2 and 5 times powers of ten from `leastG` up to `mostG`. */
function readableMasses(leastG: number, mostG: number): number[] {
  const masses: number[] = []
  for (let power = Math.floor(Math.log10(leastG)); 10 ** power <= mostG; power++) {
    for (const digit of [1, 2, 5]) {
      const massG = Number((digit * 10 ** power).toPrecision(12))
      if (massG >= leastG * (1 - 1e-12) && massG <= mostG) masses.push(massG)
    }
  }
  return masses
}
