import 'server-only'
import type { ArmDayVerdict } from '../../calc/analysis/judge-arm-days'
import type { ArmResult, Comparison } from './compare-arms'

/**
 * How much a verdict says for the dough that was asked about, from what speaks against it to what speaks for it: for a gain
 * worse, no worthwhile difference, undecided, better on the pooled error only, better; for 'no worse' worse, undecided, no
 * worse; for 'the same' different, undecided, the same. That there is no worthwhile difference is a finding and stands
 * below what is open.
 */
const order = {
  worse: 0,
  different: 0,
  'no-worthwhile-difference': 1,
  undecided: 2,
  'better-on-pooled-error-only': 3,
  better: 4,
  'no-worse': 4,
  same: 4,
} as const satisfies Record<ArmDayVerdict, number>

/** Without a verdict nothing is decided. 'Clearly' goes the way of its verdict. */
function favour({ verdict }: Pick<ArmResult, 'verdict'>): number {
  if (verdict === null) return order.undecided
  const clearly = verdict.verdict === 'worse' ? -0.5 : 0.5
  return order[verdict.verdict] + (verdict.clearly ? clearly : 0)
}

/**
 * Of two comparisons of one trial, with and without some doughs, the less favourable: of each arm what says less for it,
 * and the first where both say the same. What one of them shows against an arm stands also where the other is an
 * indication.
 */
export function lessFavourable(without: Comparison, withThem: Comparison): Comparison {
  const arms = without.arms.map((arm) => {
    const other = withThem.arms.find((each) => each.arm === arm.arm)
    return other && favour(other) < favour(arm) ? other : arm
  })
  const isAgainst = arms.some((arm, i) => arm !== without.arms[i])
  return {
    ...without,
    isIndication: without.isIndication && !(isAgainst && !withThem.isIndication),
    arms,
  }
}
