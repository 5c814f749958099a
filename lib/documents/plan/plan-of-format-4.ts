import 'server-only'
import { z } from 'zod'
import { plan } from './parts'
import { planOfFormat3 } from './plan-of-format-3'

/** Format 3 with what the verdict is said of, and who is not to know which dough is which. */
export const planOfFormat4 = z.strictObject({
  ...planOfFormat3.shape,
  format: z.literal(4),
  declared: z.strictObject({
    ...plan.declared.shape,
    holdsFor: z.enum(['any_day', 'these_days']),
    /** Null where it was proposed before that was declared. */
    blinded: z.array(z.enum(['weighing', 'baking', 'measuring', 'tasting'])).nullable(),
  }),
})

export type PlanOfFormat4 = z.output<typeof planOfFormat4>
