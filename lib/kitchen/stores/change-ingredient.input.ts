import { z } from 'zod'
import { seenRevision } from '../text.input'
import { ingredientFacts } from './ingredient-facts.input'

/** `as-before` keeps the day of the last check; it stands only while the list of allergens does. */
export const changeIngredientInput = ingredientFacts.extend({
  ingredientId: z.uuid(),
  seenRevision,
  allergenCheck: z.enum(['unknown', 'as-before', 'checked-now']),
  inUse: z.boolean(),
})
