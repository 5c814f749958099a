import { z } from 'zod'
import { line } from '../text.input'

/** As long as anybody keeps a loaf to read it: a month. */
const ageH = z.number().min(0).max(744).nullable()
const figure = z.number().min(-1_000_000).max(1_000_000)

/** A measure of the bakery's own. Least, most and the repeat limit are in its unit. */
export const addMeasureInput = z
  .strictObject({
    name: line(80),
    unit: line(20),
    /** After the decimal mark. */
    digits: z.int().min(0).max(6),
    level: z.enum(['batch', 'piece']),
    direction: z.enum(['larger', 'smaller', 'none']),
    plausibleLeast: figure,
    plausibleMost: figure,
    repeats: z.int().min(1).max(3),
    /** Most that two readings may differ by; null takes the usual share of the mean. */
    repeatLimit: z.number().gt(0).max(1_000_000).nullable(),
    /** How it is read, so that everybody reads it alike. */
    method: line(200),
    /** At what age out of the oven it is read, h: from, and to; null for any, or any later one. */
    ageLeastH: ageH,
    ageMostH: ageH,
  })
  .refine(({ plausibleLeast, plausibleMost }) => plausibleLeast < plausibleMost, {
    path: ['plausibleMost'],
    params: { code: 'range-without-room' },
  })
  .refine(({ ageLeastH, ageMostH }) => ageMostH === null || (ageLeastH !== null && ageLeastH < ageMostH), {
    path: ['ageMostH'],
    params: { code: 'age-without-room' },
  })
