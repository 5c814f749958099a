import 'server-only'
import { command } from '../command'
import { Refusal } from '../refusal'
import { staleRefusal } from '../stale'
import { changeIngredientInput } from './change-ingredient.input'
import { figureRows, ingredientColumns } from './ingredient-columns'
import { checkedAtAfter } from './rules'
import { ingredientFacts } from './ingredient-facts'

/**
 * Changes what is written down of an ingredient, or takes it out of use and back. Formula versions that were signed
 * keep what they were signed with. Refuses: not-found, stale, invalid with 'name-taken' or 'check-again' at its field.
 */
export const changeIngredient = command({
  name: 'stores.change-ingredient',
  input: changeIngredientInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input }) {
    const { bakeryId } = actor
    const key = { bakeryId, id: input.ingredientId }
    const former = await tx.ingredient.findUnique({
      where: { bakeryId_id: key },
      select: {
        ...ingredientFacts,
        figures: { select: { figure: true, gPer100G: true, source: true }, orderBy: { figure: 'asc' } },
      },
    })
    if (!former) throw new Refusal('not-found')
    const columns = ingredientColumns(input)
    const figures = figureRows(input)
    const checked = checkedAtAfter(former, { allergens: columns.allergens, check: input.allergenCheck, now })
    const { count } = await tx.ingredient.updateMany({
      where: { ...key, revision: input.seenRevision },
      data: {
        ...columns,
        // A check that no longer stands is refused below, after a stale edit: its list may be somebody else's.
        allergensCheckedAt: checked === 'check-again' ? null : checked,
        endedAt: input.inUse ? null : (former.endedAt ?? now),
        revision: { increment: 1 },
      },
    })
    if (count !== 1) throw await staleRefusal(tx, actor, input.ingredientId)
    if (checked === 'check-again') throw Refusal.at('allergenCheck', 'check-again')
    await tx.ingredientFigure.deleteMany({ where: { bakeryId, ingredientId: key.id } })
    await tx.ingredientFigure.createMany({ data: figures.map((row) => ({ bakeryId, ingredientId: key.id, ...row })) })
    const { allergensCheckedAt, endedAt, ...before } = former
    return {
      value: null,
      audit: {
        target: key.id,
        before: { ...before, allergensCheckedAt: allergensCheckedAt?.toISOString() ?? null, inUse: !endedAt },
        after: { ...columns, figures, allergensCheckedAt: checked?.toISOString() ?? null, inUse: input.inUse },
      },
    }
  },
})
