import { z } from 'zod'

/** Far more than the longest cursor of ours. */
const longest = 2_000

/**
 * From where on a list is read: the cursor that its page before ended with, as it stands in an address. What cannot
 * be one is as good as none, so that an old or mangled address still opens the list.
 */
export const after = z.string().max(longest).optional().catch(undefined)
