import 'server-only'
import { z } from 'zod'
import { shownOfFormat2 } from './shown-of-format-2'

const { isIndication, arms } = shownOfFormat2.shape

/** Format 2 with what the headline rests on. */
export const shownOfFormat3 = z.strictObject({
  ...shownOfFormat2.shape,
  format: z.literal(3),
  headline: z.strictObject({
    isIndication,
    arms: z.array(arms.element.omit({ id: true, name: true, good: true })),
    /** Codes of the doughs that were set aside for what was found later, without and with which it is the less favourable. */
    lessFavourableOf: z.array(z.string()),
  }),
})

export type ShownOfFormat3 = z.output<typeof shownOfFormat3>
