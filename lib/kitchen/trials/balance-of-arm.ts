import 'server-only'
import { balanceArm, type BalancedArm } from '../../calc/arms/balance-arm'
import { totalShare } from '../../calc/arms/total-share'
import type { LineSet } from '../../calc/arms/types'
import { armTotals, asArmLine, heldTotalOf } from './as-arm-line'
import { askedTotals } from './asked-totals'
import type { ControlDough, DrawnDose } from './drawn-dough'
import { movesOfArm } from './moves-of-arm'
import type { PlanFacts, PlanWarning } from './plan-types'
import { resolutionOfLine } from './resolution-of-line'
import { scaleOfLines } from './scale-of-lines'

/** Balances one arm of a plan, and says of which totals and ingredients it could not know enough. */
export function balanceOfArm(
  facts: PlanFacts,
  control: ControlDough,
  arm: PlanFacts['arms'][number],
  doses: readonly DrawnDose[],
  set: readonly LineSet[],
): { balanced: BalancedArm; warnings: PlanWarning[] } {
  const armLines = control.lines.map(({ id, ingredient, massG, scale }) =>
    asArmLine(id, ingredient, massG, resolutionOfLine(scale)),
  )
  const added = doses.flatMap(({ dose: { productG }, ingredient }, d) =>
    productG > 0
      ? [
          asArmLine(
            `dose.${d}`,
            ingredient,
            productG,
            resolutionOfLine(
              scaleOfLines(facts, { stageKind: control.doseStageKind, ingredientId: ingredient.id }, [
                { dose: d, exactG: productG },
              ]),
            ),
          ),
        ]
      : [],
  )
  const unchanged = () => balanceArm({ control: armLines, added, set, hold: [], moves: [], how: 'on-top' })
  if (arm.onTop) return { balanced: unchanged(), warnings: [] }

  const asked = askedTotals(doses)
  const held = facts.declared.heldTotals.map((total) => armTotals[total])
  const wanted = held.filter((total) => !asked.includes(total))
  // A total that a dose does not state cannot be held; the others are, and the plan says so.
  const isSet = ({ id }: { id: string }) => set.some(({ lineId }) => lineId === id)
  const named = [
    ...doses.map(({ ingredient }, d) => ({
      d,
      name: ingredient.name,
      line: added.find(({ id }) => id === `dose.${d}`),
    })),
    ...control.lines
      .filter(isSet)
      .map(({ id, ingredient }) => ({ d: null, name: ingredient.name, line: armLines.find((each) => each.id === id) })),
  ]
  const unstated = wanted.flatMap((total) =>
    named.flatMap(({ line, ...each }) => (line && totalShare(line, total) === null ? [{ total, ...each }] : [])),
  )
  const hold = wanted.filter((total) => !unstated.some((each) => each.total === total))
  const finalDough = armLines.filter(
    (line) => !isSet(line) && control.lines.some(({ id, isFinalDough }) => id === line.id && isFinalDough),
  )
  const { moves, unstatedLineIds } = movesOfArm(
    finalDough,
    hold,
    new Map([...stayingForDose(control, doses), ...choicesByLine(facts, control)]),
  )
  const warnings: PlanWarning[] = [
    ...held
      .filter((total) => asked.includes(total))
      .map((total): PlanWarning => ({ code: 'balance-asked-about', dose: null, facts: { total: heldTotalOf(total) } })),
    ...unstated.map(
      ({ total, d, name }): PlanWarning => ({
        code: 'balance-not-stated',
        dose: d,
        facts: { ingredient: name, total: heldTotalOf(total) },
      }),
    ),
    ...[...new Set(unstatedLineIds)].map(
      (id): PlanWarning => ({
        code: 'composition-unknown',
        dose: null,
        facts: { ingredient: control.lines.find((line) => line.id === id)?.ingredient.name ?? '' },
      }),
    ),
  ]
  const balanced: BalancedArm =
    hold.length === 0
      ? { ...unchanged(), outcome: unstated.length > 0 ? 'not-balanced' : 'nothing-to-balance' }
      : balanceArm({ control: armLines, added, set, hold, moves, how: 'balanced' })
  const reasons = balanced.reasons.map(
    ({ code, total, broughtG, removableG, offG, offShare }): PlanWarning => ({
      code: `balance-${code}`,
      dose: null,
      // Where the control has none of it, all that comes is too much.
      facts: {
        total: heldTotalOf(total),
        broughtG,
        removableG,
        offG,
        offPct: offShare === null ? 100 : 100 * offShare,
      },
    }),
  )
  const nameOf = (lineId: string) =>
    control.lines.find(({ id }) => id === lineId)?.ingredient.name ??
    doses.find((_, d) => lineId === `dose.${d}`)?.ingredient.name ??
    ''
  const oddities = balanced.warnings.map(
    ({ code, lineId }): PlanWarning => ({ code, dose: null, facts: { ingredient: nameOf(lineId) } }),
  )
  const outcome = unstated.length > 0 ? 'not-balanced' : balanced.outcome
  return { balanced: { ...balanced, outcome }, warnings: [...warnings, ...reasons, ...oddities] }
}

/** Lines of what a dose adds stay, unless somebody chose otherwise: more of an ingredient that makes room for itself would be no more. */
function stayingForDose(control: ControlDough, doses: readonly DrawnDose[]): [string, boolean][] {
  const added = new Set(doses.filter(({ dose }) => dose.productG > 0).map(({ ingredient }) => ingredient.id))
  return control.lines.filter(({ ingredient }) => added.has(ingredient.id)).map(({ id }) => [id, false])
}

/** What was chosen for lines of the final dough about moving, by the line. */
function choicesByLine({ choices }: Pick<PlanFacts, 'choices'>, control: ControlDough): Map<string, boolean> {
  return new Map(
    control.lines.flatMap(({ id, stageKind, ingredient }) => {
      const choice = choices.find((each) => each.stageKind === stageKind && each.ingredientId === ingredient.id)
      return typeof choice?.mayMove === 'boolean' ? [[id, choice.mayMove] as const] : []
    }),
  )
}
