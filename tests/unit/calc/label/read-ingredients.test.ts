import { expect, test } from 'vitest'
import { readIngredients } from '@/lib/calc/label/read-ingredients'

const lines = [
  { name: 'flour', massG: 300 },
  { name: 'margarine', massG: 50 },
  { name: 'flour', massG: 700 },
]
const q = { lines, parts: [], allergens: [] }

test('flour of several stages is one ingredient, parts stand at their compound', () => {
  const parts = [
    { of: 'margarine', name: 'oil', sharePct: 80 },
    { of: 'margarine', name: 'water', sharePct: 19.8 },
  ]
  const read = readIngredients({ lines, parts, allergens: [{ of: 'oil', allergen: 'soya' }] })
  expect(read.ingredients.map(({ name, massG }) => [name, massG])).toEqual([
    ['flour', 1000],
    ['margarine', 50],
  ])
  expect(read.ingredients[1]?.parts).toEqual(parts)
  expect(read.allergensOf.get('oil')?.present).toEqual(['soya'])
  expect(read.partsAddUp).toBe(true)
  expect(readIngredients({ lines, parts: parts.slice(0, 1), allergens: [] }).partsAddUp).toBe(false)
})

test.each([
  ['no lines', { ...q, lines: [] }, { code: 'empty' }],
  ['a line without a name', { ...q, lines: [{ name: ' ', massG: 1 }] }, { code: 'empty' }],
  ['a line without mass', { ...q, lines: [{ name: 'salt', massG: 0 }] }, { code: 'out-of-range' }],
  [
    'lines of one name that differ',
    {
      ...q,
      lines: [
        { name: 'x', massG: 1 },
        { name: 'x', massG: 1, isAddedWater: true },
      ],
    },
    { facts: expect.objectContaining({ reason: 'lines-disagree' }) },
  ],
  [
    'a part of nothing',
    { ...q, parts: [{ of: 'butter', name: 'milk', sharePct: 80 }] },
    { facts: expect.objectContaining({ reason: 'unknown-ingredient', field: 'parts[0].of' }) },
  ],
  [
    'an allergen of nothing',
    { ...q, allergens: [{ of: 'butter', allergen: 'milk' as const }] },
    { facts: expect.objectContaining({ reason: 'unknown-ingredient', value: 'butter' }) },
  ],
  [
    'parts beyond the whole',
    {
      ...q,
      parts: [
        { of: 'margarine', name: 'a', sharePct: 60 },
        { of: 'margarine', name: 'b', sharePct: 41 },
      ],
    },
    { facts: expect.objectContaining({ reason: 'parts-over-100' }) },
  ],
  [
    'a part named twice',
    {
      ...q,
      parts: [
        { of: 'margarine', name: 'a', sharePct: 6 },
        { of: 'margarine', name: 'a', sharePct: 4 },
      ],
    },
    { code: 'duplicate' },
  ],
])('%s is refused', (_what, input, error) =>
  expect(() => readIngredients(input)).toThrow(expect.objectContaining(error)),
)
