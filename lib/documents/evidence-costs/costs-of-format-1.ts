import 'server-only'
import { z } from 'zod'
import { costs } from '../evidence/figures'

/** What the doughs of a trial cost, as it was shown to those who see costs. Amounts as decimal text. */
export const costsOfFormat1 = z.strictObject({ format: z.literal(1), ...costs.shape })

export type CostsOfFormat1 = z.output<typeof costsOfFormat1>
