import 'server-only'
import { v7 as uuid } from 'uuid'
import { command } from '../command'
import { addIngredientInput } from './add-ingredient.input'
import { figureRows, ingredientColumns } from './ingredient-columns'

/** Adds an ingredient to the stores. Refuses: invalid, with 'name-taken' at its name. */
export const addIngredient = command({
  name: 'stores.add-ingredient',
  input: addIngredientInput,
  right: 'edit-stores',
  async run({ tx, actor, now, input }) {
    const key = { bakeryId: actor.bakeryId, id: uuid() }
    const columns = ingredientColumns(input)
    const figures = figureRows(input)
    const allergensCheckedAt = input.allergenCheck === 'checked-now' ? now : null
    await tx.ingredient.create({ data: { ...key, ...columns, allergensCheckedAt, revision: 1, createdAt: now } })
    await tx.ingredientFigure.createMany({
      data: figures.map((row) => ({ bakeryId: key.bakeryId, ingredientId: key.id, ...row })),
    })
    return {
      value: { ingredientId: key.id },
      audit: {
        target: key.id,
        after: { ...columns, allergensCheckedAt: allergensCheckedAt?.toISOString() ?? null, figures },
      },
    }
  },
})
