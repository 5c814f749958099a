import { z } from 'zod'
import { calendarDay, line } from '../text.input'

/** A price of a pack. The amount is decimal text in the bakery's currency, so that no cent is lost on the way. */
export const enterPriceInput = z.strictObject({
  ingredientId: z.uuid(),
  /** First day on which it holds, YYYY-MM-DD in the bakery's zone. */
  holdsFrom: calendarDay,
  packMassG: z.number().gt(0).max(100_000_000),
  packPrice: z.string().refine((text) => /^\d{1,8}(\.\d{1,4})?$/.test(text), { params: { code: 'not-an-amount' } }),
  supplier: line(120),
})
