import { z } from 'zod'

/** Six digits, as they are typed on the number keys of a tablet. */
export const choosePinInput = z.strictObject({
  pin: z.string().refine((pin) => /^[0-9]{6}$/.test(pin), { params: { code: 'pin-not-six-digits' } }),
})
