import { describe, expect, test } from 'vitest'
import { z } from 'zod'
import { fieldsOfSchema } from '@/lib/kitchen/calculators/shape-of-schema'

const number = { kind: 'number', isWhole: false }
const asked = (shape: z.ZodType) => fieldsOfSchema(z.strictObject({ it: shape }), 'input')[0]

describe('the shape of a field', () => {
  test.each<[string, z.ZodType, unknown]>([
    ['a number', z.number(), number],
    ['a whole number', z.int(), { kind: 'number', isWhole: true }],
    ['a bounded number', z.number().min(0).max(1), number],
    ['a text', z.string(), { kind: 'text' }],
    ['yes or no', z.boolean(), { kind: 'yes-no' }],
    ['a choice', z.enum(['a', 'b']), { kind: 'choice', values: ['a', 'b'] }],
    ['a choice of one', z.literal('a'), { kind: 'choice', values: ['a'] }],
    ['a choice of numbers', z.literal([50, 300]), { kind: 'choice', values: [50, 300] }],
    [
      'a choice put together',
      z.union([z.enum(['a', 'b']), z.literal('c')]),
      { kind: 'choice', values: ['a', 'b', 'c'] },
    ],
    ['a list of numbers', z.array(z.number()), { kind: 'list', of: number }],
    ['a list of lists', z.array(z.array(z.number())), { kind: 'list', of: { kind: 'list', of: number } }],
    ['a pair', z.tuple([z.number(), z.string()]), { kind: 'other' }],
    ['a table by name', z.record(z.string(), z.number()), { kind: 'other' }],
    ['a number or a text', z.union([z.number(), z.string()]), { kind: 'other' }],
    ['anything', z.unknown(), { kind: 'other' }],
  ])('%s', (_, schema, shape) => {
    expect(asked(schema)).toEqual({ name: 'it', shape, isOptional: false, isNullable: false })
  })

  test('what may be left out, or be null, is known as such', () => {
    expect(asked(z.number().optional())).toEqual({ name: 'it', shape: number, isOptional: true, isNullable: false })
    expect(asked(z.number().nullable())).toEqual({ name: 'it', shape: number, isOptional: false, isNullable: true })
    expect(asked(z.enum(['a']).nullable().optional())).toEqual({
      name: 'it',
      shape: { kind: 'choice', values: ['a'] },
      isOptional: true,
      isNullable: true,
    })
    expect(asked(z.number().default(2))).toMatchObject({ isOptional: true })
  })

  test('a list of lines has the fields of a line', () => {
    expect(asked(z.array(z.strictObject({ id: z.string(), massG: z.number().optional() })))?.shape).toEqual({
      kind: 'list',
      of: {
        kind: 'group',
        fields: [
          { name: 'id', shape: { kind: 'text' }, isOptional: false, isNullable: false },
          { name: 'massG', shape: number, isOptional: true, isNullable: false },
        ],
      },
    })
  })
})

test('an answer that has several forms has the fields of all of them', () => {
  const answer = z.discriminatedUnion('outcome', [
    z.strictObject({ outcome: z.literal('direct'), portionG: z.number() }),
    z.strictObject({ outcome: z.literal('not-possible'), bestErrorShare: z.number().nullable() }),
  ])
  expect(fieldsOfSchema(answer, 'output')).toEqual([
    {
      name: 'outcome',
      shape: { kind: 'choice', values: ['direct', 'not-possible'] },
      isOptional: false,
      isNullable: false,
    },
    { name: 'portionG', shape: number, isOptional: true, isNullable: false },
    { name: 'bestErrorShare', shape: number, isOptional: true, isNullable: true },
  ])
})

test('an answer that is no object has no fields', () => {
  expect(fieldsOfSchema(z.array(z.number()), 'output')).toEqual([])
})
