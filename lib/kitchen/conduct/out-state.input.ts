import { z } from 'zod'

/** Ends of a dough that are not the plan's: it was never begun, it cannot be baked on, it is kept out of the comparison. */
export const outState = z.enum(['not_baked', 'lost', 'set_aside'])
export type OutState = z.output<typeof outState>
