import { mustBeReading } from '../checks'
import { CalcError } from '../error'
import { groupBy } from '../group-by'

/** Far more than a trial has, and still quick. */
const MOST_ARMS = 100

/** One dough, its value the mean of its loaves; without a value it was lost. */
export type DoughRow = { arm: string; block: string; y?: number }

/** The doughs of one arm that were kept on one mixing day. */
export type ArmDay = {
  arm: string
  block: string
  doughs: number
  mean: number
  /** Of the doughs about their mean, doughs − 1 df. */
  sumSquares: number
}

export type CountedArmDays = {
  /** Those compared, in the order given, the control first. */
  arms: string[]
  /** Without a dough kept on a day that counts. */
  leftOut: string[]
  /** Days that count, in order of first appearance. */
  blocks: string[]
  /** Days that count on which every arm given, left out or not, has a dough kept. */
  completeDays: number
  cells: ArmDay[]
}

/**
 * Which mixing days and arms a comparison with the control rests on, and the arm-day means: a day counts when the
 * control and at least one other arm have a dough kept on it; an arm without such a day is left out.
 * @param rows a row a dough, up to 100 arms; values finite, up to ±1e100; @param arms the control first, two or more
 * @throws CalcError 'duplicate' | 'not-finite' | 'out-of-range' (with reason 'many-arms' beyond 100); 'wrong-shape' with
 *   reason 'unknown-arm'; 'not-possible' with reason 'one-arm' or 'no-day-counted'
 * Source: the project's declared rule; the experimental unit is the mix, Hurlbert (1984), Ecological Monographs 54.
 */
export function countArmDays(q: { rows: readonly DoughRow[]; arms: readonly string[] }): CountedArmDays {
  const known = new Set(q.arms)
  if (known.size !== q.arms.length) throw new CalcError('duplicate', { field: 'arms' })
  if (q.arms.length < 2) throw new CalcError('not-possible', { field: 'arms', value: q.arms.length, reason: 'one-arm' })
  if (q.arms.length > MOST_ARMS)
    throw new CalcError('out-of-range', { field: 'rows', value: q.arms.length, max: MOST_ARMS, reason: 'many-arms' })
  const kept = q.rows.flatMap(({ arm, block, y }, i) => {
    if (!known.has(arm))
      throw new CalcError('wrong-shape', { field: `rows[${i}].arm`, value: arm, reason: 'unknown-arm' })
    return y === undefined ? [] : [{ arm, block, y: mustBeReading(`rows[${i}].y`, y) }]
  })
  const control = q.arms[0]!
  const days = [...groupBy(kept, ({ block }) => block)].map(([block, doughs]) => ({
    block,
    ofArm: groupBy(doughs, ({ arm }) => arm),
  }))
  const counted = days.filter(({ ofArm }) => ofArm.has(control) && ofArm.size > 1)
  if (counted.length === 0)
    throw new CalcError('not-possible', { field: 'rows', value: kept.length, reason: 'no-day-counted' })
  const isKept = (arm: string) => counted.some(({ ofArm }) => ofArm.has(arm))
  return {
    arms: q.arms.filter(isKept),
    leftOut: q.arms.filter((arm) => !isKept(arm)),
    blocks: counted.map(({ block }) => block),
    completeDays: counted.filter(({ ofArm }) => ofArm.size === q.arms.length).length,
    cells: counted.flatMap(({ block, ofArm }) =>
      q.arms.flatMap((arm) => {
        const doughs = ofArm.get(arm)
        return doughs ? [{ arm, block, ...meanOf(doughs.map(({ y }) => y)) }] : []
      }),
    ),
  }
}

/** About the first value, so that a large common part costs no digits. */
function meanOf(values: readonly number[]): { doughs: number; mean: number; sumSquares: number } {
  const first = values[0]!
  const shift = values.reduce((sum, value) => sum + (value - first), 0) / values.length
  const sumSquares = values.reduce((sum, value) => sum + (value - first - shift) ** 2, 0)
  return { doughs: values.length, mean: first + shift, sumSquares }
}
