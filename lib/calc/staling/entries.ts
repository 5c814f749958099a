import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { avramiExponent } from './avrami-exponent'
import { firmnessAt } from './firmness-at'
import { fitFirmness } from './fit-firmness'
import { halfLifeDays } from './half-life'
import { rateAtTemperature } from './rate-at-temperature'
import { softerThanControl } from './softer-than-control'

const source = 'S. J. Cornford, D. W. E. Axford, G. A. H. Elton (1964), Cereal Chemistry 41: 216–229'

export const stalingEntries = [
  calcEntry({
    id: 'staling/firmness-at',
    input: z.strictObject({
      startFirmness: z.number(),
      endFirmness: z.number(),
      ratePerDay: z.number(),
      days: z.number(),
      avramiExponent: z.optional(z.number()),
    }),
    output: z.strictObject({ firmness: z.number() }),
    example: { startFirmness: 3, endFirmness: 12, ratePerDay: 0.3, days: 2 },
    source,
    run: (q) => ({ firmness: firmnessAt(q) }),
  }),
  calcEntry({
    id: 'staling/half-life',
    input: z.strictObject({ ratePerDay: z.number(), avramiExponent: z.optional(z.number()) }),
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
    run: (q) =>
      atFlatFields({ start: 'readings', x: 'readings', y: 'readings' }, () =>
        fitFirmness({ ...q, startFirmness: q.startFirmness ?? null }),
      ),
  }),
  calcEntry({
    id: 'staling/avrami-exponent',
    input: z.strictObject({
      startFirmness: z.number(),
      endFirmness: z.number(),
      firstDays: z.number(),
      firstFirmness: z.number(),
      secondDays: z.number(),
      secondFirmness: z.number(),
    }),
    output: z.strictObject({ avramiExponent: z.number(), ratePerDay: z.number(), halfLifeDays: z.number() }),
    example: { startFirmness: 3, endFirmness: 12, firstDays: 1, firstFirmness: 5, secondDays: 3, secondFirmness: 8.4 },
    source: 'Avrami equation, as applied to bread by Cornford, Axford and Elton (1964)',
    run: avramiExponent,
  }),
  calcEntry({
    id: 'staling/rate-at-temperature',
    input: z.strictObject({
      ratePerDay: z.number(),
      tempC: z.number(),
      otherTempC: z.number(),
      timesPer10Colder: z.number(),
    }),
    output: z.strictObject({ ratePerDay: z.number() }),
    example: { ratePerDay: 0.3, tempC: 21, otherTempC: 8, timesPer10Colder: 2.18 },
    source: 'H. McGee, On Food and Cooking: one day at 7 °C as six at 30 °C, so 2.18 times for each 10 °C colder',
    run: (q) => ({ ratePerDay: rateAtTemperature(q) }),
  }),
  calcEntry({
    id: 'staling/softer-than-control',
    input: z.strictObject({ controlFirmness: z.number(), armFirmness: z.number() }),
    output: z.strictObject({ softerPct: z.number(), controlFirmerPct: z.number() }),
    example: { controlFirmness: 8.4, armFirmness: 7.1 },
    source: 'definition; common practice, no source',
    run: softerThanControl,
  }),
] as const
