import 'server-only'
import type { Tx } from '../../db/client'
import type { EquipmentKind } from '../../db/generated/enums'
import { versionInProduction } from '../formulas/version-in-production'
import { Refusal, type Problem } from '../refusal'
import type { TrialContent } from './trial-content.input'

/** Product on flour, %, above which a dose of an active substance cannot be meant. */
const mostProductPct = 200

/**
 * Demands that everything a trial names is this bakery's, in use and fit for it; all faults at once. What is another
 * bakery's is not there.
 * @param at where the content stands in the input: its problems begin with that
 * @returns the version in production now, which is the control
 */
export async function mustBePlannable(tx: Tx, bakeryId: string, content: TrialContent, now: Date, at: string): Promise<{ controlVersionId: string }> {
  const problems: Problem[] = []
  const fault = (path: string, code: Problem['code']) => problems.push({ path: `${at}${path}`, code, facts: {} })

  const formula = await tx.formula.findUnique({ where: { bakeryId_id: { bakeryId, id: content.formulaId } }, select: { id: true } })
  const version = formula && (await versionInProduction(tx, bakeryId, formula.id, now))
  if (!formula) fault('formulaId', 'wrong-choice')
  else if (!version) fault('formulaId', 'nothing-in-production')

  const measure = await tx.measure.findUnique({ where: { bakeryId_id: { bakeryId, id: content.measureId } }, select: { direction: true, endedAt: true, level: true } })
  if (!measure || measure.endedAt) fault('measureId', 'wrong-choice')
  else if (measure.direction === 'none' && content.kind === 'gain') fault('measureId', 'measure-without-direction')
  else if (measure.level === 'batch' && content.factor) fault('measureId', 'measure-not-of-pieces')

  for (const [field, kind] of [['scaleId', 'scale'], ['mixerId', 'mixer']] as const) {
    const id = content[field]
    if (id !== null && !(await isEquipmentInUse(tx, bakeryId, id, kind))) fault(field, 'wrong-choice')
  }

  const ids = [...new Set(content.arms.flatMap((arm) => arm.doses.map((dose) => dose.ingredientId)))]
  const found = await tx.ingredient.findMany({ where: { bakeryId, id: { in: ids } }, select: { id: true, endedAt: true, activeShare: true } })
  const byId = new Map(found.map((ingredient) => [ingredient.id, ingredient]))
  content.arms.forEach((arm, a) =>
    arm.doses.forEach((dose, d) => {
      const ingredient = byId.get(dose.ingredientId)
      const path = `arms.${a}.doses.${d}`
      if (!ingredient) fault(`${path}.ingredientId`, 'wrong-choice')
      else if (ingredient.endedAt) fault(`${path}.ingredientId`, 'ingredient-ended')
      else if (dose.doseOf === 'active' && ingredient.activeShare === null) fault(`${path}.doseOf`, 'no-active-stated')
      else if (dose.doseOf === 'active' && ingredient.activeShare !== null && pctFlour(dose) / ingredient.activeShare > mostProductPct) fault(`${path}.value`, 'dose-too-large')
    }),
  )
  if (problems.length > 0 || !version) throw new Refusal('invalid', {}, problems)
  return { controlVersionId: version.id }
}

function pctFlour({ basis, value }: { basis: TrialContent['arms'][number]['doses'][number]['basis']; value: number }): number {
  switch (basis) {
    case 'pct_flour':
      return value
    case 'g_per_kg_flour':
      return value / 10
    case 'ppm_flour':
      return value / 10_000
    default:
      return basis satisfies never
  }
}

async function isEquipmentInUse(tx: Tx, bakeryId: string, id: string, kind: EquipmentKind): Promise<boolean> {
  return (await tx.equipment.count({ where: { bakeryId, id, kind, endedAt: null } })) === 1
}
