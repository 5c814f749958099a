import { z } from 'zod'

/** Most readings that one request may bring. */
export const mostReadings = 100

/** The frame of a request; each entry is read by the command that it is for, and refused by itself. */
export const sendReadingsInput = z.strictObject({ readings: z.array(z.looseObject({})).min(1).max(mostReadings) })
