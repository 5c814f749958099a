import { describe, expect, test } from 'vitest'
import { catalogue } from '@/lib/calc/catalogue'
import type { CalcEntry } from '@/lib/calc/entry'
import { calculationWords } from '@/lib/kitchen/calculators/calculation-words'
import { fieldsOfSchema, type FieldShape, type Shape } from '@/lib/kitchen/calculators/shape-of-schema'
import { reasons } from '@/lib/words/en/calculators/reasons'
import { units } from '@/lib/words/en/calculators/units'
import { sourceFilesIn, textOf } from '@/tests/support/source-files'

const entries: readonly CalcEntry[] = catalogue

function namesOf(fields: readonly FieldShape[]): string[] {
  return fields.flatMap(({ name, shape }) => [name, ...namesOf(fieldsInside(shape))])
}

function fieldsInside(shape: Shape): readonly FieldShape[] {
  if (shape.kind === 'list') return fieldsInside(shape.of)
  return shape.kind === 'group' ? shape.fields : []
}

function choicesOf(shape: Shape): string[] {
  if (shape.kind === 'list') return choicesOf(shape.of)
  if (shape.kind === 'group') return shape.fields.flatMap((field) => choicesOf(field.shape))
  return shape.kind === 'choice' ? shape.values.filter((value) => typeof value === 'string') : []
}

describe.each(entries)('$id', ({ id, input, output }) => {
  const fields = [...fieldsOfSchema(input, 'input'), ...fieldsOfSchema(output, 'output')]
  const words = calculationWords(id, 'en')

  test('has a title, and a word for every field of its question and answer', () => {
    expect(words.title).not.toBe(id)
    expect(fields.length).toBeGreaterThan(1)
    // A symbol is its own word: p, t, z.
    expect(namesOf(fields).filter((name) => name.length > 1 && words.field(name) === name)).toEqual([])
  })

  test('has a word for every choice and every warning', () => {
    expect(
      fields.flatMap(({ shape }) => choicesOf(shape)).filter((value) => words.choice(value) === undefined),
    ).toEqual([])
  })
})

test('a name is asked for as its own, not as one that every object has', () => {
  const words = calculationWords('weighing/least-net-mass', 'en')
  expect(words.field('constructor')).toBe('constructor')
  expect(words.choice('toString')).toBeUndefined()
})

test('every unit ending reads as letters of its own, and has a unit', () => {
  for (const [ending, unit] of Object.entries(units)) {
    expect(ending).toMatch(/^[A-Za-z]/)
    expect(unit).not.toBe('')
  }
})

test('every reason that has words is given by some calculation', () => {
  const sources = sourceFilesIn('lib/calc').map(textOf).join('\n')
  expect(Object.keys(reasons).filter((reason) => !sources.includes(`'${reason}'`))).toEqual([])
})
