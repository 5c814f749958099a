import { z } from 'zod'

/** The code as it was typed: blanks, dashes and small letters are as good. */
export const enrolStationInput = z.strictObject({ code: z.string().min(1).max(40) })
