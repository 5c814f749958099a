import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { firmnessAt } from './firmness-at'
import { fitFirmness } from './fit-firmness'
import { halfLifeDays } from './half-life'

const source = 'S. J. Cornford, D. W. E. Axford, G. A. H. Elton (1964), Cereal Chemistry 41: 216–229'

export const stalingEntries = [
  calcEntry({
    id: 'staling/firmness-at',
    input: z.strictObject({
      startFirmness: z.number(),
      endFirmness: z.number(),
      ratePerDay: z.number(),
      days: z.number(),
    }),
    output: z.strictObject({ firmness: z.number() }),
    example: { startFirmness: 3, endFirmness: 12, ratePerDay: 0.3, days: 2 },
    source,
    run: (q) => ({ firmness: firmnessAt(q) }),
  }),
  calcEntry({
    id: 'staling/half-life',
    input: z.strictObject({ ratePerDay: z.number() }),
    output: z.strictObject({ halfLifeDays: z.number() }),
    example: { ratePerDay: 0.3 },
    source,
    run: (q) => ({ halfLifeDays: halfLifeDays(q) }),
  }),
  calcEntry({
    id: 'staling/fit-firmness',
    input: z.strictObject({
      readings: z.array(z.strictObject({ days: z.number(), firmness: z.number() })),
      startFirmness: z.number().optional(),
    }),
    output: z.strictObject({
      startFirmness: z.number(),
      startStandardError: z.number().nullable(),
      endFirmness: z.number(),
      endStandardError: z.number(),
      ratePerDay: z.number(),
      rateStandardError: z.number(),
      residualSumSquares: z.number(),
      residualSd: z.number(),
      residualDf: z.number(),
      warnings: z.array(z.enum(['end-not-seen'])),
    }),
    example: {
      readings: [
        { days: 0, firmness: 3.1 },
        { days: 1, firmness: 5.2 },
        { days: 2, firmness: 7.1 },
        { days: 3, firmness: 8.0 },
        { days: 5, firmness: 9.9 },
        { days: 8, firmness: 11.2 },
      ],
    },
    source,
    run: (q) => atFlatFields({ start: 'readings', x: 'readings', y: 'readings' }, () => fitFirmness({ ...q, startFirmness: q.startFirmness ?? null })),
  }),
] as const
