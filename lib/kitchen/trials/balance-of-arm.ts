import 'server-only'
import { balanceArm, type BalancedArm } from '../../calc/arms/balance-arm'
import { totalShare } from '../../calc/arms/total-share'
import { armTotals, asArmLine, heldTotalOf } from './as-arm-line'
import type { DrawnDose } from './draw-up-arm'
import type { ControlDough } from './draw-up-plan'
import { movesOfArm } from './moves-of-arm'
import type { PlanFacts, PlanWarning } from './plan-types'

/** Balances one arm of a plan, and says of which totals and ingredients it could not know enough. */
export function balanceOfArm(
  facts: PlanFacts,
  control: ControlDough,
  arm: PlanFacts['arms'][number],
  doses: readonly DrawnDose[],
): { balanced: BalancedArm; warnings: PlanWarning[] } {
  const { resolutionG } = control
  const armLines = control.lines.map(({ id, ingredient, massG }) => asArmLine(id, ingredient, massG, resolutionG))
  const added = doses.map(({ dose, ingredient }, d) => asArmLine(`dose.${d}`, ingredient, dose.productG, resolutionG))
  if (arm.onTop) return { balanced: balanceArm({ control: armLines, added, hold: [], moves: [], how: 'on-top' }), warnings: [] }

  const wanted = facts.declared.heldTotals.map((held) => armTotals[held])
  // A total that a dose does not state cannot be held; the others are, and the plan says so.
  const unstated = wanted.flatMap((total) => added.flatMap((line, d) => (totalShare(line, total) === null ? [{ total, d }] : [])))
  const hold = wanted.filter((total) => !unstated.some((each) => each.total === total))
  const finalDough = armLines.filter((line) => control.lines.some(({ id, isFinalDough }) => id === line.id && isFinalDough))
  const { moves, unstatedLineIds } = movesOfArm(finalDough, hold)
  const warnings: PlanWarning[] = [
    ...unstated.map(({ total, d }): PlanWarning => ({
      code: 'balance-not-stated',
      dose: d,
      facts: { ingredient: doses[d]?.ingredient.name ?? '', total: heldTotalOf(total) },
    })),
    ...[...new Set(unstatedLineIds)].map((id): PlanWarning => ({
      code: 'composition-unknown',
      dose: null,
      facts: { ingredient: control.lines.find((line) => line.id === id)?.ingredient.name ?? '' },
    })),
  ]
  const balanced: BalancedArm =
    hold.length === 0
      ? { ...balanceArm({ control: armLines, added, hold: [], moves: [], how: 'on-top' }), outcome: 'not-balanced' }
      : balanceArm({ control: armLines, added, hold, moves, how: 'balanced' })
  const reasons = balanced.reasons.map(({ code, total, broughtG, removableG, offG, offShare }): PlanWarning => ({
    code: `balance-${code}`,
    dose: null,
    // Where the control has none of it, all that comes is too much.
    facts: { total: heldTotalOf(total), broughtG, removableG, offG, offPct: offShare === null ? 100 : 100 * offShare },
  }))
  const nameOf = (lineId: string) =>
    control.lines.find(({ id }) => id === lineId)?.ingredient.name ?? doses[added.findIndex(({ id }) => id === lineId)]?.ingredient.name ?? ''
  const oddities = balanced.warnings.map(({ code, lineId }): PlanWarning => ({ code, dose: null, facts: { ingredient: nameOf(lineId) } }))
  const outcome = unstated.length > 0 ? 'not-balanced' : balanced.outcome
  return { balanced: { ...balanced, outcome }, warnings: [...warnings, ...reasons, ...oddities] }
}
