import { mixStep } from './mix-step'
import { thinPremixes } from './thin-premixes'
import type { DoseAim, MadePremix, ReadyScale } from './types'
import { weighableMassesG } from './weighable-masses'

/** Mixes tried for one step of the search, whatever the scales. */
const MOST_TRIED = 60_000
/** Premixes that the next step starts from. */
const MOST_KEPT = 400

/**
 * Premixes of one more step over what the scales can weigh, for further steps to start from. Every mark is tried while
 * that stays within some 60,000 mixes; beyond, marks spread by equal ratios. Of premixes alike only the best is kept,
 * and of more than 400 those with the least error and the largest in each range of strength.
 * @param from premixes of the steps before; for the first step PURE
 * Source: none; a bounded search.
 */
export function furtherMixes(aim: DoseAim, scales: readonly ReadyScale[], from: readonly MadePremix[]): MadePremix[] {
  const perScale = Math.max(4, Math.floor(Math.sqrt(MOST_TRIED / Math.max(1, from.length)) / scales.length))
  const allowed = (aim.errorShare / aim.coverageFactor) ** 2
  const best = new Map<string, MadePremix>()
  for (const before of from) {
    const leastG = aim.doseG / before.share
    const mostTakeG = Math.min(before.totalG, aim.mostPremixG)
    for (const takeG of weighableMassesG({ scales, leastG, mostG: mostTakeG, mostPerScale: perScale })) {
      // Beyond this the portion would bring more carrier than the formula can give up.
      const mostG = Math.min(aim.mostPremixG - takeG, (takeG / leastG) * (aim.mostCarrierG + aim.doseG) - takeG)
      for (const carrierG of weighableMassesG({ scales, leastG: Number.MIN_VALUE, mostG, mostPerScale: perScale })) {
        const made = mixStep(scales, before, takeG, carrierG)
        if (made === null || made.variance >= allowed) continue
        const key = `${made.share.toPrecision(10)} ${made.totalG.toPrecision(10)}`
        const held = best.get(key)
        if (held === undefined || isOutdone(held, made)) best.set(key, made)
      }
    }
  }
  return thinPremixes([...best.values()], MOST_KEPT)
}

/** Error first: it decides whether a further step can do it at all. */
function isOutdone(held: MadePremix, made: MadePremix): boolean {
  const more = held.variance - made.variance
  return Math.abs(more) > 1e-12 * held.variance ? more > 0 : made.madeG < held.madeG
}
