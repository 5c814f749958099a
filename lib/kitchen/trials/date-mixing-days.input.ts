import { z } from 'zod'
import { calendarDay } from '../text.input'

/** Dates of mixing days, those that were added among them, each with the one that was there when it was chosen. */
export const dateMixingDaysInput = z.strictObject({
  trialId: z.uuid(),
  days: z
    .array(
      z.strictObject({ number: z.int().min(1).max(60), seen: calendarDay.nullable(), day: calendarDay.nullable() }),
    )
    .min(1)
    .max(60),
})
