import { z } from 'zod'
import { calendarDay } from '../text.input'

/** A lot that was said at the bench, with the days that its label and its delivery note say. */
export const confirmLotInput = z
  .strictObject({
    lotId: z.uuid(),
    receivedOn: calendarDay,
    /** Null where the label has none, such as salt. */
    bestBefore: calendarDay.nullable(),
  })
  .refine(({ receivedOn, bestBefore }) => bestBefore === null || bestBefore >= receivedOn, {
    path: ['bestBefore'],
    params: { code: 'before-received' },
  })

/** A lot that was said at the bench under a wrong code, and the one that it is. */
export const matchLotInput = z.strictObject({ lotId: z.uuid(), sameAsId: z.uuid() })
