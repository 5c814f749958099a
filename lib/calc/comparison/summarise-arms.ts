import { mustBeReading, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { groupBy } from '../group-by'
import { type ValueSummary, summariseValues } from './summarise-values'

/** One experimental unit: its arm and its value. */
export type ArmRow = { arm: string; y: number }

export type ArmSummaries = {
  /** The first value; means are `origin + offset`. */
  origin: number
  /** Largest absolute value. */
  largest: number
  count: number
  /** Within arms, summed. */
  sumSquares: number
  arms: ({ arm: string } & ValueSummary)[]
}

/**
 * Count, mean and sum of squares of every arm, in order of first appearance.
 * @param rows one per experimental unit; two arms or more, `least` values in each
 * @throws CalcError 'not-finite' | 'out-of-range'; 'empty' with reason 'arm-without-name' or 'few-values' and the arm;
 * 'not-possible' with reason 'one-arm'
 * Source: definition.
 */
export function summariseArms(rows: readonly ArmRow[], least: number): ArmSummaries {
  mustHaveAtLeast('rows', rows, 1)
  rows.forEach(({ arm, y }, i) => {
    if (arm === '') throw new CalcError('empty', { field: `rows[${i}].arm`, reason: 'arm-without-name' })
    mustBeReading(`rows[${i}].y`, y)
  })
  const groups = groupBy(rows, (row) => row.arm)
  if (groups.size < 2) throw new CalcError('not-possible', { field: 'rows', value: groups.size, reason: 'one-arm' })
  for (const [arm, list] of groups) {
    if (list.length < least)
      throw new CalcError('empty', { field: 'rows', value: arm, min: least, reason: 'few-values' })
  }
  const origin = rows[0]!.y
  const arms = [...groups].map(([arm, list]) => ({
    arm,
    ...summariseValues(
      'rows',
      list.map(({ y }) => y),
      origin,
    ),
  }))
  return {
    origin,
    largest: rows.reduce((most, { y }) => Math.max(most, Math.abs(y)), 0),
    count: rows.length,
    sumSquares: arms.reduce((sum, arm) => sum + arm.sumSquares, 0),
    arms,
  }
}
