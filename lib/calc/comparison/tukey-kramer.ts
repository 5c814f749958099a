import { mustBeReading, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { studentizedRangeQuantile } from '../distributions/studentized-range-quantile'
import { studentizedRangeTail } from '../distributions/studentized-range-tail'
import { fitAdditive } from '../analysis/fit-additive'
import { groupBy } from '../group-by'

/** Each pair costs an integral of its own. */
const MOST_ARMS = 20

type Row = { arm: string; block?: string; y: number }

export type PairComparison = {
  from: string
  to: string
  /** `to` minus `from`. */
  difference: number
  se: number
  low: number
  high: number
  pAdjusted: number
}

export type TukeyKramer = {
  method: 'tukey-kramer'
  residualSd: number
  df: number
  /** Of the studentized range, for all pairs together. */
  criticalValue: number
  confidence: number
  pairs: PairComparison[]
}

/**
 * All pairs of arms with simultaneous intervals. Against a control alone, Dunnett's adjustment is the sharper one.
 * @param rows one per experimental unit; 2 to 20 arms; `block` on all or on none, and then every block has the arms in
 * the same proportions, so that blocks cancel out of the differences
 * @param confidence joint, 0.5 to 0.9999
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range', as fitAdditive; 'not-possible' with reason 'unbalanced-blocks'
 * Source: Tukey (1953); Kramer (1956), Biometrics 12; Hayter (1984), Annals of Statistics 12 (unequal numbers are conservative).
 */
export function tukeyKramer(q: { rows: readonly Row[]; confidence: number }): TukeyKramer {
  mustHaveAtLeast('rows', q.rows, 1)
  q.rows.forEach(({ y }, i) => mustBeReading(`rows[${i}].y`, y))
  const inArm = groupBy(q.rows, (row) => row.arm)
  const arms = [...inArm.keys()]
  if (arms.length > MOST_ARMS)
    throw new CalcError('out-of-range', { field: 'rows', value: arms.length, max: MOST_ARMS, reason: 'many-arms' })
  mustBeBalanced(inArm, q.rows.length)
  const { residualSd, residualDf: df, armMeans } = fitAdditive({ rows: q.rows, arms, confidence: q.confidence })
  const groups = arms.length
  const criticalValue = studentizedRangeQuantile({ p: 1 - q.confidence, groups, df })
  const pairs = armMeans.flatMap((from, i) =>
    armMeans.slice(i + 1).map((to): PairComparison => {
      const difference = to.estimate - from.estimate
      const se = residualSd * Math.sqrt(1 / inArm.get(from.arm)!.length + 1 / inArm.get(to.arm)!.length)
      const half = (criticalValue / Math.SQRT2) * se
      const pAdjusted = studentizedRangeTail({ range: (Math.SQRT2 * Math.abs(difference)) / se, groups, df }).upper
      return { from: from.arm, to: to.arm, difference, se, low: difference - half, high: difference + half, pAdjusted }
    }),
  )
  return { method: 'tukey-kramer', residualSd, df, criticalValue, confidence: q.confidence, pairs }
}

/** Counts of a cell must be count of its arm × count of its block / all. */
function mustBeBalanced(inArm: ReadonlyMap<string, readonly Row[]>, count: number): void {
  const inBlock = groupBy([...inArm.values()].flat(), (row) => row.block ?? '')
  for (const [block, members] of inBlock) {
    const cells = groupBy(members, (row) => row.arm)
    for (const [arm, rows] of inArm) {
      if ((cells.get(arm)?.length ?? 0) * count !== rows.length * members.length) {
        throw new CalcError('not-possible', { field: 'rows', value: `${arm} ${block}`, reason: 'unbalanced-blocks' })
      }
    }
  }
}
