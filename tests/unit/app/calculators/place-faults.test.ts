import { expect, test } from 'vitest'
import { z } from 'zod'
import { placeFaults } from '@/app/(desk)/calculators/[subject]/[name]/place-faults'
import { sayerOf } from '@/app/(desk)/calculators/sayer'
import { fieldsOfSchema } from '@/lib/kitchen/calculators/shape-of-schema'
import type { Fault } from '@/lib/kitchen/calculators/fault-of-calc-error'

const fields = fieldsOfSchema(
  z.strictObject({
    resolutionG: z.number(),
    valuesG: z.array(z.number()),
    batchesG: z.array(z.array(z.number())),
    lines: z.array(z.strictObject({ netMassG: z.number() })),
  }),
  'input',
)
const sayer = sayerOf('weighing/least-net-mass', 'en', 'en-GB')
const place = (path: string) =>
  placeFaults([{ path, code: 'missing', facts: {} } satisfies Fault], fields, { 'lines.1.netMassG': ['x'] }, sayer)
    .all[0]

test.each([
  ['resolutionG', 'resolutionG', 'Smallest step of the scale', 'This is needed.'],
  ['valuesG.3', 'valuesG', 'valuesG', 'At value 4. This is needed.'],
  ['batchesG.1.2', 'batchesG', 'batchesG', 'In line 2, at value 3. This is needed.'],
  ['lines', 'lines', 'lines', 'This is needed.'],
  ['lines.1.netMassG', 'lines.1.netMassG', 'Row 2, lines: Net mass', 'This is needed.'],
  ['lines.7.netMassG', 'lines', 'lines', 'At ‘Row 8, Net mass’. This is needed.'],
  ['lines.1.deepestName', 'lines', 'lines', 'This is needed.'],
  ['boundedLeastSquares', 'question', 'What is given', 'This is needed.'],
  ['netMassG', 'question', 'What is given', 'At ‘Net mass’. This is needed.'],
])('a fault at %s leads to %s', (path, fieldId, label, text) => {
  expect(place(path)).toEqual({ fieldId, label, text })
})

test('a field that is not known is called as somebody typed it', () => {
  const unknown = (path: string) => placeFaults([{ path, code: 'unknown-field', facts: {} }], fields, {}, sayer).all[0]
  expect(unknown('resolutionMg')).toEqual({
    fieldId: 'question',
    label: 'resolutionMg',
    text: 'This field is not known here.',
  })
  expect(unknown('lines.7.tareG')).toEqual({
    fieldId: 'lines',
    label: 'lines',
    text: 'At ‘7.tareG’. This field is not known here.',
  })
})

test('two faults of one control are both said there', () => {
  const faults: Fault[] = [0, 1].map((i) => ({ path: `valuesG.${i}`, code: 'missing', facts: {} }))
  expect(placeFaults(faults, fields, {}, sayer).at.get('valuesG')).toBe(
    'At value 1. This is needed. At value 2. This is needed.',
  )
})

test('a bound of a share is said in the % that it was asked in, and a number of values as it is', () => {
  const asked = fieldsOfSchema(z.strictObject({ errorShare: z.number(), lossShares: z.array(z.number()) }), 'input')
  const faults: Fault[] = [
    { path: 'errorShare', code: 'above-range', facts: { value: 1.5, max: 0.005 } },
    { path: 'lossShares.1', code: 'not-below', facts: { value: 1, max: 1 } },
    { path: 'lossShares', code: 'too-few', facts: { min: 1 } },
  ]
  expect(placeFaults(faults, asked, {}, sayer).all.map(({ text }) => text)).toEqual([
    'Must not be above 0.5.',
    'At value 2. Must be less than 100.',
    'At least 1 are needed.',
  ])
})
