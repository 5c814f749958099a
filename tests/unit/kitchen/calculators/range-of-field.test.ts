import { expect, test } from 'vitest'
import { z } from 'zod'
import { mustBeWhole, mustBeWithin } from '@/lib/calc/checks'
import { calcEntry } from '@/lib/calc/entry'
import { rangeOfField } from '@/lib/kitchen/calculators/range-of-field'

const entry = calcEntry({
  id: 'invented/range',
  input: z.strictObject({
    share: z.number(),
    any: z.number(),
    runs: z.number(),
    lines: z.array(z.strictObject({ massG: z.number() })),
  }),
  output: z.strictObject({ sum: z.number() }),
  example: { share: 0.5, any: 1, runs: 3, lines: [{ massG: 2 }, { massG: 3 }] },
  source: 'invented for this test',
  run: ({ share, runs, lines }) => {
    mustBeWhole('runs', runs, { min: 1, max: 1e6 })
    // an end that belongs, and may take long: it is not to be tried
    if (runs === 1e6) throw new Error('tried')
    lines.forEach(({ massG }, i) => mustBeWithin(`lines[${i}].massG`, massG, { over: 0 }))
    return { sum: mustBeWithin('share', share, { min: 0, under: 1 }) }
  },
})

test('the ends are those that the calculation refuses by, and whether they belong', () => {
  expect(rangeOfField(entry, ['share'])).toEqual({ min: 0, max: 1, isMinIn: true, isMaxIn: false })
  expect(rangeOfField(entry, ['runs'])).toEqual({ min: 1, max: 1e6, isMinIn: true, isMaxIn: true })
  expect(rangeOfField(entry, ['lines', 0, 'massG'])).toEqual({ min: 0, isMinIn: false, isMaxIn: true })
  expect(rangeOfField(entry, ['any'])).toEqual({ isMinIn: true, isMaxIn: true })
})
