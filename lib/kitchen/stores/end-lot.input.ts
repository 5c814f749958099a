import { z } from 'zod'

/** Used up; sent back, recalled or spoilt; written down wrongly. */
export const lotEnd = z.enum(['used_up', 'taken_out', 'mistaken'])

export const endLotInput = z.strictObject({ lotId: z.uuid(), why: lotEnd })
