import { z } from 'zod'

/** By what it was found, later, that something was wrong with a dough: something that a second person can be shown. */
export const foundObject = z.enum(['ingredient_left', 'tasted', 'stock_count', 'other'])
export type FoundObject = z.output<typeof foundObject>
