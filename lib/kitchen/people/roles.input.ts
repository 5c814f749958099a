import { z } from 'zod'

/** The roles a person can have in a bakery. */
export const role = z.enum(['owner', 'head_baker', 'shift_baker'])
