import { z } from 'zod'
import { calcEntry } from '../entry'
import { decimalText } from './decimal-text'
import { massToBuy } from './mass-to-buy'
import { mustBeDecimal } from './must-be-decimal'
import { usablePrice } from './usable-price'

/** Money as a decimal in text, in minor units of one currency. */
const minor = z.string()

export const buyingEntries = [
  calcEntry({
    id: 'cost/usable-price',
    input: z.strictObject({
      packMinor: minor,
      packMassG: z.number(),
      pieces: z.optional(z.number()),
      freightMinor: minor,
      freightMassG: z.number(),
      preparedFromG: z.number(),
      preparedToG: z.number(),
      lossPct: z.number(),
    }),
    output: z.strictObject({
      boughtPerKgMinor: minor,
      usableYieldPct: z.number(),
      usablePerKgMinor: minor,
      perPieceMinor: z.nullable(minor),
    }),
    example: {
      packMinor: '1290',
      packMassG: 6000,
      pieces: 40,
      freightMinor: '900',
      freightMassG: 120_000,
      preparedFromG: 3000,
      preparedToG: 2550,
      lossPct: 2,
    },
    source: 'W. Gisslen, Professional Cooking, as reproduced: divide by the yield; arithmetic',
    run: ({ packMinor, freightMinor, pieces = null, ...q }) => {
      const price = usablePrice({
        ...q,
        pieces,
        packMinor: mustBeDecimal('packMinor', packMinor),
        freightMinor: mustBeDecimal('freightMinor', freightMinor),
      })
      return {
        boughtPerKgMinor: decimalText(price.boughtPerKgMinor),
        usableYieldPct: price.usableYieldPct.toNumber(),
        usablePerKgMinor: decimalText(price.usablePerKgMinor),
        perPieceMinor: price.perPieceMinor && decimalText(price.perPieceMinor),
      }
    },
  }),
  calcEntry({
    id: 'cost/mass-to-buy',
    input: z.strictObject({ preparedFromG: z.number(), preparedToG: z.number(), neededG: z.number() }),
    output: z.strictObject({ usableYieldPct: z.number(), toBuyG: z.number(), readyOfSameG: z.number() }),
    example: { preparedFromG: 3000, preparedToG: 2550, neededG: 4000 },
    source: 'W. Gisslen, Professional Cooking, as reproduced: divide by the yield',
    run: massToBuy,
  }),
] as const
