import type { MassUnit } from '../../words/format/mass'
import { plainMass } from './plain-mass'
import type { StoodLine } from './stand-of-line'
import { massLess, sumOfMasses } from './sum-of-masses'

/** Some of what was weighed is not poured in, or some more is, by the feel of the dough. */
export const waterChanges = ['heldBack', 'added'] as const
export type WaterChange = (typeof waterChanges)[number]

export type WaterAfter =
  | { outcome: 'mass'; mass: string }
  | { outcome: 'none-typed' }
  | { outcome: 'all-held' }
  | { outcome: 'too-much' }

/** Whether a line is mixing water that stands, so that it can change; of several lots nobody could say which one did. */
export function canChangeWater({ isWater, stands }: Pick<StoodLine, 'isWater' | 'stands'>): boolean {
  return isWater === true && stands !== null && stands.lots.length <= 1
}

/** The water that is in a dough by what stands of its line, as it is typed: as planned where it was ticked. */
export function waterInDough({ target, stands }: Pick<StoodLine, 'target' | 'stands'>, unit: MassUnit): string {
  if (stands?.how === 'left_out') return '0'
  return plainMass(stands?.how === 'weighed' ? (stands.massG ?? 0) : target.massG, unit)
}

/**
 * The water that is in a dough after some was held back or added, exact in its decimals.
 * @param q.inDough as `waterInDough`
 * @param q.by plain number, as `readTyped` gives it
 * @param q.planned what the plan has of it, likewise: more than that on top was typed in another unit, or is a slip
 */
export function waterAfter(q: { change: WaterChange; inDough: string; by: string; planned: string }): WaterAfter {
  const { change, inDough, by, planned } = q
  if (Number(by) <= 0) return { outcome: 'none-typed' }
  if (change === 'added')
    return Number(by) > Number(planned)
      ? { outcome: 'too-much' }
      : { outcome: 'mass', mass: sumOfMasses([inDough, by]) }
  const mass = massLess(inDough, by)
  return mass === null || Number(mass) === 0 ? { outcome: 'all-held' } : { outcome: 'mass', mass }
}
