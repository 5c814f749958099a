import { z } from 'zod'

const isZone = (zone: string) => {
  try {
    new Intl.DateTimeFormat('en', { timeZone: zone })
    return true
  } catch {
    return false
  }
}

/** How a bakery counts, weighs and tells the time. */
export const bakerySettings = z.strictObject({
  timeZone: z
    .string()
    .min(1)
    .max(60)
    .refine(isZone, { params: { code: 'unknown-zone' } }),
  locale: z.enum(['en-GB', 'en-US', 'en-IE', 'en-CA', 'en-AU', 'en-NZ', 'en-DE', 'en-SE', 'en-ZA']),
  currency: z.enum(['EUR', 'GBP', 'USD', 'CHF', 'SEK', 'DKK', 'NOK', 'PLN', 'CZK', 'CAD', 'AUD', 'NZD']),
  region: z.enum(['eu', 'uk', 'us', 'other']),
  massUnits: z.enum(['metric', 'ounces']),
  temperatureUnits: z.enum(['celsius', 'fahrenheit']),
})
