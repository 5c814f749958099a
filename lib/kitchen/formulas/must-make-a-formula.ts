import 'server-only'
import type { Tx } from '../../db/client'
import { formatNumber } from '../../words/format/number'
import { withUnit } from '../../words/format/with-unit'
import { Refusal, type Problem } from '../refusal'
import type { FormulaContent } from './formula-content.input'
import { flourOffPct } from './rules'

/**
 * Demands that every line names an ingredient of this bakery that is still in use, and that the flour of all stages
 * makes 100 %. All faults at once; nothing is put right in silence.
 * @throws Refusal at the lines, and at `flour` with how far it is off
 */
export async function mustMakeAFormula(tx: Tx, bakeryId: string, stages: FormulaContent['stages']): Promise<void> {
  const ids = [...new Set(stages.flatMap((stage) => stage.lines.map((line) => line.ingredientId)))]
  const found = await tx.ingredient.findMany({
    where: { bakeryId, id: { in: ids } },
    select: { id: true, kind: true, endedAt: true },
  })
  const byId = new Map(found.map((ingredient) => [ingredient.id, ingredient]))
  const problems: Problem[] = stages.flatMap((stage, s) =>
    stage.lines.flatMap((line, l): Problem[] => {
      const ingredient = byId.get(line.ingredientId)
      if (ingredient && !ingredient.endedAt) return []
      return [
        {
          path: `stages.${s}.lines.${l}.ingredientId`,
          code: ingredient ? 'ingredient-ended' : 'wrong-choice',
          facts: {},
        },
      ]
    }),
  )
  const lines = stages.flatMap((stage) =>
    stage.lines.map((line) => ({ kind: byId.get(line.ingredientId)?.kind ?? 'other', pctFlour: line.pctFlour })),
  )
  const offPct = flourOffPct(lines)
  if (offPct !== 0) {
    const { locale } = await tx.bakery.findUniqueOrThrow({ where: { bakeryId }, select: { locale: true } })
    const pct = (value: number) => withUnit(formatNumber(value, { locale, digits: 2 }), '%')
    problems.push({
      path: 'flour',
      code: offPct < 0 ? 'flour-short' : 'flour-over',
      facts: { sum: pct(100 + offPct), off: pct(Math.abs(offPct)) },
    })
  }
  if (problems.length > 0) throw new Refusal('invalid', {}, problems)
}
