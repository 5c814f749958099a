import { z } from 'zod'
import { calendarDay, line, note } from '../text.input'
import { lotCode } from './lot-code.input'

/** A lot of an ingredient, as its label, its delivery note and what was measured of it say. */
export const receiveLotInput = z
  .strictObject({
    ingredientId: z.uuid(),
    /** As it stands on the label. */
    code: lotCode,
    receivedOn: calendarDay,
    /** Null where the label has none, such as salt. */
    bestBefore: calendarDay.nullable(),
    /** What was measured of this lot, such as a falling number or the units of an enzyme: what, how much, in which unit. */
    strength: z.strictObject({ of: line(80), value: z.number().min(0).max(1_000_000_000), unit: line(40) }).nullable(),
    note: note(1000),
  })
  .refine(({ receivedOn, bestBefore }) => bestBefore === null || bestBefore >= receivedOn, {
    path: ['bestBefore'],
    params: { code: 'before-received' },
  })
