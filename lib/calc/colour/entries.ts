import { z } from 'zod'
import { calcEntry } from '../entry'
import { browningIndex } from './browning-index'
import { deltaE2000 } from './delta-e2000'
import { labFromSrgb } from './lab-from-srgb'

const lab = { lightness: z.number(), a: z.number(), b: z.number() }

export const colourEntries = [
  calcEntry({
    id: 'colour/lab-from-srgb',
    input: z.strictObject({ red: z.number(), green: z.number(), blue: z.number() }),
    output: z.strictObject(lab),
    example: { red: 176, green: 124, blue: 70 },
    source: 'IEC 61966-2-1 (sRGB); CIE 15 (CIELAB)',
    run: labFromSrgb,
  }),
  calcEntry({
    id: 'colour/delta-e2000',
    input: z.strictObject({
      lightness1: z.number(),
      a1: z.number(),
      b1: z.number(),
      lightness2: z.number(),
      a2: z.number(),
      b2: z.number(),
    }),
    output: z.strictObject({ difference: z.number() }),
    example: { lightness1: 58.2, a1: 12.4, b1: 31.5, lightness2: 55.9, a2: 13.6, b2: 32.1 },
    source: 'G. Sharma, W. Wu and E. N. Dalal, Color Research and Application 30, 2005',
    run: (q) => ({
      difference: deltaE2000(
        { lightness: q.lightness1, a: q.a1, b: q.b1 },
        { lightness: q.lightness2, a: q.a2, b: q.b2 },
      ),
    }),
  }),
  calcEntry({
    id: 'colour/browning-index',
    input: z.strictObject({ ...lab, divisor: z.enum(['0.17', '0.172']) }),
    output: z.strictObject({ browningIndex: z.number() }),
    example: { lightness: 58.2, a: 12.4, b: 31.5, divisor: '0.17' },
    source: 'E. Palou et al., Journal of Food Science 64, 1999, from memory',
    run: ({ divisor, ...colour }) => ({ browningIndex: browningIndex(colour, divisor) }),
  }),
] as const
