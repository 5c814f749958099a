import { mustBeWithin } from '../checks'
import { furtherMixes } from './further-mixes'
import { lastMix } from './last-mix'
import { PURE } from './mix-step'
import { portionRoute } from './portion-route'
import { readyScales } from './ready-scales'
import { roundMixes } from './round-mixes'
import { thinPremixes } from './thin-premixes'
import type { DoseAim, MadePremix, PremixPlan, ReadyScale, Scale, WeighingRoute } from './types'
import { weighableMassesG } from './weighable-masses'

const MOST_STEPS = 3
/** Takes tried in the last step, over all premixes that it may start from. */
const MOST_LAST_TAKES = 40_000
/** Round premixes that the next step starts from. */
const MOST_ROUND = 3_000
/** A nanogram, and a hundred tonnes. */
const LEAST_DOSE_G = 1e-9
const MOST_MASS_G = 1e8

/**
 * Finds how to weigh a small dose within a relative error: directly, or through a premix of one or more steps in flour
 * or water. Fewest steps first. Among those, round masses (1, 2 or 5 times a power of ten, in usual dilutions) where they
 * do it, otherwise any that the scales can weigh; then least premix made up, then least error.
 * The last step is searched over every mark of every scale, up to 40,000 takes; the steps before it over every mark as
 * long as those are few (some 60,000 mixes), beyond that over marks spread by equal ratios.
 * Errors of every weighing are carried through (mixStep, portionRoute). A premix is taken as evenly mixed; that is the
 * mixer's part of the error and is not in the figure.
 * @param doseG product for one dough, g, a nanogram to 100 t, as all masses
 * @param errorShare relative error allowed, 0 < e < 1, at coverageFactor k > 0
 * @param scales at least one; each mass goes on the one with the least uncertainty that can carry it
 * @param mostCarrierG carrier that the formula can give up for one dough, g, ≥ 0
 * @param mostPremixG largest premix that can be mixed evenly, g, > 0
 * @returns `bestErrorShare` is the least error among round masses
 * @throws CalcError 'empty' | 'duplicate' | 'not-finite' | 'out-of-range'
 * Source: law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2; the search is our own.
 */
export function planPremix(q: DoseAim & { scales: readonly Scale[] }): PremixPlan {
  mustBeWithin('doseG', q.doseG, { min: LEAST_DOSE_G, max: MOST_MASS_G })
  mustBeWithin('errorShare', q.errorShare, { over: 0, under: 1 })
  mustBeWithin('coverageFactor', q.coverageFactor, { over: 0 })
  mustBeWithin('mostCarrierG', q.mostCarrierG, { min: 0, max: MOST_MASS_G })
  mustBeWithin('mostPremixG', q.mostPremixG, { over: 0, max: MOST_MASS_G })
  const scales = readyScales(q.scales)
  const direct = portionRoute(q, scales, PURE)
  if (direct !== null && direct.errorShare <= q.errorShare) return direct

  let bestErrorShare = direct?.errorShare ?? null
  let round: MadePremix[] = [PURE]
  let any: MadePremix[] = [PURE]
  const isWorthSearching = leastPortionError(q, scales) <= q.errorShare
  for (let count = 1; count <= MOST_STEPS; count++) {
    round = bestOfAlike(round.flatMap((before) => roundMixes(q, scales, before)))
    const routes = round.flatMap((made) => portionRoute(q, scales, made) ?? [])
    for (const { errorShare } of routes) bestErrorShare = Math.min(errorShare, bestErrorShare ?? Infinity)
    const found = least(routes.filter(({ errorShare }) => errorShare <= q.errorShare))
    if (found !== null) return found
    if (isWorthSearching) {
      if (count > 1) any = furtherMixes(q, scales, any)
      const searched = anyRoute(q, scales, any)
      if (searched !== null) return searched
    }
    // Further weighings only add to the error: what is already past both the target and the best so far leads nowhere.
    const hopeless = Math.max(q.errorShare, bestErrorShare ?? Infinity)
    round = thinPremixes(
      round.filter((one) => q.coverageFactor * Math.sqrt(one.variance) < hopeless),
      MOST_ROUND,
    )
  }
  return { outcome: 'not-possible', bestErrorShare }
}

/** Error of the largest portion that the formula can take, which no premix can undo. */
function leastPortionError(aim: DoseAim, scales: readonly ReadyScale[]): number {
  const mostG = Math.min(aim.mostCarrierG + aim.doseG, aim.mostPremixG)
  return Math.min(
    ...scales.map(({ capacityG, uncertaintyG }) => (aim.coverageFactor * uncertaintyG) / Math.min(capacityG, mostG)),
  )
}

function anyRoute(aim: DoseAim, scales: readonly ReadyScale[], from: readonly MadePremix[]): WeighingRoute | null {
  const mostPerScale = Math.max(8, Math.floor(MOST_LAST_TAKES / Math.max(1, from.length) / scales.length))
  return least(
    from.flatMap((before) => {
      const mostG = Math.min(before.totalG, aim.mostPremixG)
      const takesG = weighableMassesG({ scales, leastG: aim.doseG / before.share, mostG, mostPerScale })
      return lastMix(aim, scales, before, takesG) ?? []
    }),
  )
}

/** Least premix to make up, then least error. */
function least(routes: readonly WeighingRoute[]): WeighingRoute | null {
  return routes.reduce<WeighingRoute | null>((best, route) => {
    const moreG = best === null ? -Infinity : route.premixMadeG - best.premixMadeG
    const isBetter = Math.abs(moreG) > 1e-9 ? moreG < 0 : route.errorShare < (best?.errorShare ?? Infinity)
    return isBetter ? route : best
  }, null)
}

/** Of premixes alike in content, size and premix made before, only the best weighed one can be of use. */
function bestOfAlike(made: readonly MadePremix[]): MadePremix[] {
  const best = new Map<string, MadePremix>()
  for (const one of made) {
    const key = [one.share, one.totalG, one.madeG].map((value) => value.toPrecision(10)).join(' ')
    const held = best.get(key)
    if (held === undefined || one.variance < held.variance) best.set(key, one)
  }
  return [...best.values()]
}
