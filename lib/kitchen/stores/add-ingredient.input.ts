import { z } from 'zod'
import { ingredientFacts } from './ingredient-facts.input'

/** Without a check the list of allergens says nothing about those that are not on it. */
export const addIngredientInput = ingredientFacts.extend({ allergenCheck: z.enum(['unknown', 'checked-now']) })
