import { z } from 'zod'

/** A PIN as it was typed: nothing is trimmed, cut or changed. */
export const typedPin = z.string().min(1).max(12)

export const logOnInput = z.strictObject({ personId: z.uuid(), pin: typedPin })
