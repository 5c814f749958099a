import { z } from 'zod'

/** What the code of a badge said, as it was read. */
export const showBadgeInput = z.strictObject({ badge: z.string().min(1).max(400) })
