import { z } from 'zod'
import { calcEntry } from '../entry'
import { cyclicSquare } from './cyclic-square'
import { latinSquare } from './latin-square'
import { williamsSquare } from './williams-square'

const rows = z.strictObject({ rows: z.array(z.strictObject({ row: z.number(), treatmentsInOrder: z.string() })) })

const asRows = (square: readonly (readonly number[])[]): z.output<typeof rows> => ({
  rows: square.map((treatments, i) => ({ row: i + 1, treatmentsInOrder: treatments.join(' ') })),
})

export const squaresEntries = [
  calcEntry({
    id: 'squares/cyclic-square',
    input: z.strictObject({ treatments: z.number() }),
    output: rows,
    example: { treatments: 4 },
    source: 'R. A. Fisher and F. Yates, Statistical Tables, 1938, Latin squares',
    run: (q) => asRows(cyclicSquare(q)),
  }),
  calcEntry({
    id: 'squares/latin-square',
    input: z.strictObject({ seed: z.string(), treatments: z.number() }),
    output: rows,
    example: { seed: 'oven places, week 12', treatments: 4 },
    source:
      'R. A. Fisher, The Design of Experiments, 1935; F. Yates, Empire Journal of Experimental Agriculture 1, 1933',
    run: (q) => asRows(latinSquare(q)),
  }),
  calcEntry({
    id: 'squares/williams-square',
    input: z.strictObject({ treatments: z.number() }),
    output: rows,
    example: { treatments: 5 },
    source: 'E. J. Williams, Australian Journal of Scientific Research A2, 1949',
    run: (q) => asRows(williamsSquare(q)),
  }),
] as const
