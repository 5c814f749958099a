import { z } from 'zod'
import { calcEntry } from '../entry'
import { countPieces } from './count-pieces'
import { scanScale } from './scan-scale'

const optionalNumber = z.optional(z.number())

export const scanAndCountEntries = [
  calcEntry({
    id: 'loaf/scan-scale',
    input: z.strictObject({
      by: z.enum(['dpi', 'ruler']),
      resolutionDpi: optionalNumber,
      rulerMm: optionalNumber,
      rulerPixels: optionalNumber,
    }),
    output: z.strictObject({ pixelUm: z.number(), pixelAreaMm2: z.number(), scannedDpi: z.number() }),
    example: { by: 'ruler', rulerMm: 100, rulerPixels: 1574 },
    source: 'definition of the inch, 25.4 mm',
    run: scanScale,
  }),
  calcEntry({
    id: 'loaf/count-pieces',
    input: z.strictObject({
      planned: z.number(),
      scaled: z.number(),
      spoilt: z.number(),
      sampled: z.number(),
      sold: z.number(),
    }),
    output: z.strictObject({
      notScaled: z.number(),
      good: z.number(),
      goodPct: z.number(),
      wasted: z.number(),
      soldPct: z.number(),
      wastedPct: z.number(),
    }),
    example: { planned: 240, scaled: 236, spoilt: 4, sampled: 3, sold: 221 },
    source: 'definitions; common practice, no source',
    run: countPieces,
  }),
] as const
