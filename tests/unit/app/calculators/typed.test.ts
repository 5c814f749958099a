import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { changeRows } from '@/app/(desk)/calculators/[subject]/[name]/change-rows'
import { readTyped } from '@/app/(desk)/calculators/[subject]/[name]/read-typed'
import { fitsAddress, queryOf, typedOfParams, type Typed } from '@/app/(desk)/calculators/[subject]/[name]/typed'
import { typedOfGiven } from '@/app/(desk)/calculators/[subject]/[name]/typed-of-given'
import { catalogue } from '@/lib/calc/catalogue'
import { fieldsOfSchema } from '@/lib/kitchen/calculators/shape-of-schema'

const scale = z.strictObject({
  id: z.string(),
  resolutionG: z.number(),
  capacityG: z.number().optional(),
  isChecked: z.boolean(),
  kind: z.enum(['bench', 'fine']).nullable(),
  standsFor: z.array(z.enum(['fat', 'sugars'])),
})
const rich = z.strictObject({
  massG: z.number(),
  seed: z.int().optional(),
  method: z.enum(['welch', 'pooled']),
  bowlG: z.literal([50, 300]).optional(),
  isPaired: z.boolean(),
  isRounded: z.boolean().optional(),
  label: z.string(),
  note: z.string().nullable(),
  pricePerKg: z.string(),
  valuesG: z.array(z.number()),
  batchesG: z.array(z.array(z.number())),
  names: z.array(z.string()).optional(),
  hold: z.array(z.enum(['water', 'fat'])),
  scales: z.array(scale),
  limit: z.strictObject({ maxMgPerKg: z.number(), basis: z.enum(['flour', 'food']) }).optional(),
  contents: z.record(z.string(), z.number()).optional(),
})
const fields = fieldsOfSchema(rich, 'input')
type Rich = z.infer<typeof rich>

const line: Rich['scales'][number] = {
  id: 'fine',
  resolutionG: 0.01,
  isChecked: true,
  kind: 'fine',
  standsFor: ['fat', 'sugars'],
}
const question: Rich = {
  massG: -12.5,
  method: 'welch',
  isPaired: false,
  label: 'rye, two days',
  note: null,
  pricePerKg: '1234.50',
  valuesG: [1.5, -2, 0.000001, 123456.789],
  batchesG: [[1, 2.5], [3]],
  hold: [],
  scales: [line, { ...line, id: 'bench', capacityG: 3000, isChecked: false, kind: null, standsFor: [] }],
}

describe('what is shown in a form is read from it again, in every locale', () => {
  test.each(['en-GB', 'de-DE', 'fr-CH', 'sv-SE'])('a question of every kind of field, %s', (locale) => {
    expect(readTyped(fields, typedOfGiven(fields, question, locale), locale)).toEqual(question)
    const fuller: Rich = {
      ...question,
      seed: 7,
      bowlG: 300,
      isRounded: true,
      note: 'a',
      names: ['the first', 'the second'],
      hold: ['fat'],
      limit: { maxMgPerKg: 3, basis: 'food' },
      contents: { a: 1 },
    }
    expect(readTyped(fields, typedOfGiven(fields, fuller, locale), locale)).toEqual(fuller)
  })

  test.each([...catalogue])('the worked example of $id', (entry) => {
    const asks = fieldsOfSchema(entry.input, 'input')
    for (const locale of ['en-GB', 'de-DE'])
      expect(readTyped(asks, typedOfGiven(asks, entry.example, locale), locale)).toEqual(entry.example)
  })

  test('any finite number, to its last digit', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc
            .double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 })
            .map((value) => (value === 0 ? 0 : value)),
          { minLength: 1 },
        ),
        fc.constantFrom('en-GB', 'de-DE'),
        (valuesG, locale) => {
          const read = readTyped(fields, typedOfGiven(fields, { ...question, valuesG }, locale), locale)
          expect(read.valuesG).toEqual(valuesG)
        },
      ),
    )
  })

  test('by way of an address', () => {
    const typed = typedOfGiven(fields, question, 'de-DE')
    const params = new URLSearchParams(queryOf(typed))
    const again = typedOfParams(
      Object.fromEntries([...new Set(params.keys())].map((name) => [name, params.getAll(name)])),
    )
    expect(readTyped(fields, again, 'de-DE')).toEqual(question)
  })
})

describe('reading what was typed', () => {
  const reading = (typed: Typed, locale = 'en-GB') => readTyped(fields, typed, locale)

  test('leaves out what is empty: nothing of a choice, null where that is an answer, no values in a list', () => {
    expect(reading({ massG: [' '], seed: [''] })).toEqual({
      note: null,
      valuesG: [],
      batchesG: [],
      hold: [],
      scales: [],
    })
  })

  test('takes numbers on lines, with blanks, semicolons or a comma and a blank between them', () => {
    expect(reading({ valuesG: [' 1.5 2\n\n3;4,  5,\t6 '] }).valuesG).toEqual([1.5, 2, 3, 4, 5, 6])
    expect(reading({ valuesG: ['1,5; 2,5'] }, 'de-DE').valuesG).toEqual([1.5, 2.5])
  })

  test('keeps what is no number, to be refused where it stands', () => {
    expect(reading({ massG: ['12,5'], valuesG: ['1 x 1e3 3,4'], batchesG: ['1 2\n3 four'] })).toMatchObject({
      massG: '12,5',
      valuesG: [1, 'x', '1e3', '3,4'],
      batchesG: [
        [1, 2],
        [3, 'four'],
      ],
    })
    expect(reading({ method: ['student'], bowlG: ['100'], contents: ['{ a: 1'] })).toMatchObject({
      method: 'student',
      bowlG: '100',
      contents: '{ a: 1',
    })
  })

  test('counts rows to the last one with something in it', () => {
    const { scales } = reading({
      'scales.0.id': ['a'],
      'scales.1.id': [''],
      'scales.2.resolutionG': ['5'],
      'scales.3.id': [''],
      'scales.4': [''],
    })
    expect(scales).toEqual([
      { id: 'a', kind: null, standsFor: [] },
      { kind: null, standsFor: [] },
      { resolutionG: 5, kind: null, standsFor: [] },
    ])
  })
})

describe('the buttons of a table', () => {
  const typed: Typed = {
    massG: ['1'],
    'scales.0.id': ['a'],
    'scales.1.id': ['b'],
    'scales.2.id': ['c'],
    'scales.2.standsFor': ['fat', 'sugars'],
  }

  test('do nothing when none was pressed', () => {
    expect(changeRows(typed)).toBeUndefined()
    expect(changeRows({ ...typed, 'row-step': ['shuffle:scales'] })).toBeUndefined()
  })

  test('add a row at the end, also to a table that has one that is empty', () => {
    expect(changeRows({ ...typed, 'row-step': ['add:scales'] })).toEqual({ ...typed, 'scales.3': [''] })
    expect(changeRows({ massG: ['1'], 'row-step': ['add:scales'] })).toEqual({ massG: ['1'], 'scales.1': [''] })
  })

  test('take a row out and move up those below', () => {
    expect(changeRows({ ...typed, 'row-step': ['remove:scales:1'] })).toEqual({
      massG: ['1'],
      'scales.0.id': ['a'],
      'scales.1.id': ['c'],
      'scales.1.standsFor': ['fat', 'sugars'],
    })
    expect(changeRows({ ...typed, 'row-step': ['remove:scales:9'] })).toEqual(typed)
  })
})

test('an address holds what fits it, and says when it is too much', () => {
  const values = (count: number) => ({
    valuesG: [Array.from({ length: count }, (_, i) => String(100 + (i % 900))).join(' ')],
  })
  expect(fitsAddress(values(10_000))).toBe(true)
  expect(fitsAddress(values(40_000))).toBe(false)
  expect(fitsAddress({ 'scales.999.id': ['a'] })).toBe(true)
  expect(fitsAddress({ 'scales.1000.id': ['a'] })).toBe(false)
})

test('an address leaves out what is empty, and keeps one empty field where there is nothing else: it is no first visit', () => {
  expect(queryOf({ massG: ['1 2'], seed: [''], hold: ['fat', 'water'] })).toBe('massG=1+2&hold=fat&hold=water')
  expect(queryOf({ massG: [''], seed: [''] })).toBe('massG=')
})
