import { z } from 'zod'

/** More than fit into an address would not come this far. */
const mostIds = 100

export const findIngredientsInput = z.strictObject({
  /** What has been typed of a name; null looks for none by name. */
  part: z.string().nullable().default(null),
  /** Ingredients that a form holds already. */
  ids: z.array(z.uuid()).max(mostIds).default([]),
})
