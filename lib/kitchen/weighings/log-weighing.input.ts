import { z } from 'zod'
import { lotCode } from '../stores/lot-code.input'
import { instant, line } from '../text.input'

/** What a line is of: the formula's ingredient, with a dose of it on the same scale; a dose by itself; a premix. */
export const weighingPart = z.enum(['line', 'dose', 'premix'])
/** As the plan says; as the scale showed it; nothing of it went in. */
export const weighingHow = z.enum(['ticked', 'weighed', 'left_out'])

/** Most lots that one line is taken from. */
const mostLots = 10

/** From which lots a line was taken: what each gave, as the scale showed it and in the unit of the whole; of a single one, nothing. */
export const weighedLots = z
  .array(z.strictObject({ lotId: z.uuid(), mass: line(40).nullish() }))
  .min(1)
  .max(mostLots)

/** As `weighedLots`; a lot that nobody at the bench knew is said by the code on its label, in place of its id. */
const sentLots = z
  .array(
    z
      .strictObject({ lotId: z.uuid().nullish(), code: lotCode.nullish(), mass: line(40).nullish() })
      .refine(({ lotId, code }) => isSaid(lotId) !== isSaid(code), {
        path: ['lotId'],
        params: { code: 'lot-by-id-or-code' },
      }),
  )
  .min(1)
  .max(mostLots)

function isSaid(text: string | null | undefined): boolean {
  return text !== null && text !== undefined
}

/** One line of one dough, as a device or a script sends it. */
export const logWeighingInput = z.strictObject({
  /** Made by the device when the line is weighed; the same id is never used for another one. */
  id: z.uuidv7(),
  batchId: z.uuid(),
  stageId: z.uuid(),
  ingredientId: z.uuid(),
  part: weighingPart,
  how: weighingHow,
  /** As the scale showed it, where it was weighed: '412.5'. */
  mass: line(40).nullish(),
  unit: line(20).nullish(),
  lots: sentLots.nullish(),
  /** By the device's own clock. */
  takenAt: instant,
  /** The weighing that was wrong, and why. */
  supersedesId: z.uuid().nullish(),
  reason: line(300).nullish(),
  /** Somebody looked again at a mass far from what any dough of the trial has, and it is right. No part of the content. */
  confirmed: z.boolean().optional(),
})
export type WeighingEntry = z.output<typeof logWeighingInput>
