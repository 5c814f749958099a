import 'server-only'
import { balanceArm, type BalancedArm } from '../../calc/arms/balance-arm'
import { totalShare } from '../../calc/arms/total-share'
import type { LineSet } from '../../calc/arms/types'
import { armTotals, asArmLine, heldTotalOf } from './as-arm-line'
import { askedTotals } from './asked-totals'
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
  set: readonly LineSet[],
): { balanced: BalancedArm; warnings: PlanWarning[] } {
  const { resolutionG } = control
  const armLines = control.lines.map(({ id, ingredient, massG }) => asArmLine(id, ingredient, massG, resolutionG))
  const added = doses.flatMap(({ dose, ingredient }, d) => (dose.productG > 0 ? [asArmLine(`dose.${d}`, ingredient, dose.productG, resolutionG)] : []))
  const unchanged = () => balanceArm({ control: armLines, added, set, hold: [], moves: [], how: 'on-top' })
  if (arm.onTop) return { balanced: unchanged(), warnings: [] }

  const asked = askedTotals(doses)
  const held = facts.declared.heldTotals.map((total) => armTotals[total])
  const wanted = held.filter((total) => !asked.includes(total))
  // A total that a dose does not state cannot be held; the others are, and the plan says so.
  const isSet = ({ id }: { id: string }) => set.some(({ lineId }) => lineId === id)
  const named = [
    ...doses.map(({ ingredient }, d) => ({ d, name: ingredient.name, line: added.find(({ id }) => id === `dose.${d}`) })),
    ...control.lines.filter(isSet).map(({ id, ingredient }) => ({ d: null, name: ingredient.name, line: armLines.find((each) => each.id === id) })),
  ]
  const unstated = wanted.flatMap((total) => named.flatMap(({ line, ...each }) => (line && totalShare(line, total) === null ? [{ total, ...each }] : [])))
  const hold = wanted.filter((total) => !unstated.some((each) => each.total === total))
  const finalDough = armLines.filter((line) => !isSet(line) && control.lines.some(({ id, isFinalDough }) => id === line.id && isFinalDough))
  const { moves, unstatedLineIds } = movesOfArm(finalDough, hold)
  const warnings: PlanWarning[] = [
    ...held.filter((total) => asked.includes(total)).map((total): PlanWarning => ({ code: 'balance-asked-about', dose: null, facts: { total: heldTotalOf(total) } })),
    ...unstated.map(({ total, d, name }): PlanWarning => ({ code: 'balance-not-stated', dose: d, facts: { ingredient: name, total: heldTotalOf(total) } })),
    ...[...new Set(unstatedLineIds)].map((id): PlanWarning => ({
      code: 'composition-unknown',
      dose: null,
      facts: { ingredient: control.lines.find((line) => line.id === id)?.ingredient.name ?? '' },
    })),
  ]
  const balanced: BalancedArm =
    hold.length === 0
      ? { ...unchanged(), outcome: unstated.length > 0 ? 'not-balanced' : 'nothing-to-balance' }
      : balanceArm({ control: armLines, added, set, hold, moves, how: 'balanced' })
  const reasons = balanced.reasons.map((reason): PlanWarning => ({
    code: `balance-${reason.code}`,
    dose: null,
    facts: { total: heldTotalOf(reason.total), broughtG: reason.broughtG, removableG: reason.removableG },
  }))
  const emptied = balanced.lines
    .filter((line) => !line.isSet && line.controlG > 0 && line.armG === 0)
    .map(({ lineId }): PlanWarning => ({ code: 'line-emptied', dose: null, facts: { ingredient: control.lines.find(({ id }) => id === lineId)?.ingredient.name ?? '' } }))
  const outcome = unstated.length > 0 ? 'not-balanced' : balanced.outcome
  return { balanced: { ...balanced, outcome }, warnings: [...warnings, ...reasons, ...emptied] }
}
