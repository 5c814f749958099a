import 'server-only'
import { z } from 'zod'
import { shownOfFormat1 } from './shown-of-format-1'

const { uncounted, withTakenOut } = shownOfFormat1.shape
const without = uncounted.element

/** Format 1 with doughs that do not count because of what was weighed for them, and what is found going by what was weighed last. */
export const shownOfFormat2 = z.strictObject({
  ...shownOfFormat1.shape,
  format: z.literal(2),
  /** With what the verdict was declared to be said of. */
  declared: z.strictObject({ ...shownOfFormat1.shape.declared.shape, holdsFor: z.enum(['any_day', 'these_days']) }),
  uncounted: z.array(
    z.strictObject({ ...without.shape, why: z.enum([...without.shape.why.options, 'out-of-its-arm']) }),
  ),
  /** The arms going by what stood of weighings at the closing; null where that counts the same doughs. */
  asLastWeighed: withTakenOut,
})
