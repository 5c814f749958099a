import fc from 'fast-check'
import { expect, test } from 'vitest'
import { openMixes } from '@/lib/calc/label/open-mixes'
import { readIngredients, type LabelAllergen, type LabelLine, type LabelPart } from '@/lib/calc/label/read-ingredients'

const opened = (lines: LabelLine[], parts: LabelPart[], allergens: LabelAllergen[] = []) =>
  openMixes(readIngredients({ lines, parts, allergens }))
const paste = { name: 'nut paste', massG: 200, isOpened: true }
const lines = [{ name: 'Sugar', massG: 30 }, paste]
const parts = [
  { of: 'nut paste', name: ' SUGAR', sharePct: 40 },
  { of: 'Nut  paste', name: 'hazelnuts', sharePct: 60 },
]

test('parts go into the list, added up with what has their name in another case or spacing', () =>
  expect(opened(lines, parts).map(({ name, massG }) => [name, massG])).toEqual([
    ['Sugar', 110],
    ['hazelnuts', 120],
  ]))

test('a mix that is not opened stays as it is, and nothing given is changed', () => {
  const read = readIngredients({ lines: [lines[0]!, { name: 'nut paste', massG: 200 }], parts, allergens: [] })
  const before = structuredClone(read.ingredients)
  expect(openMixes(read)).toEqual(before)
  const other = readIngredients({ lines, parts, allergens: [] })
  const was = structuredClone(other.ingredients)
  openMixes(other)
  expect(other.ingredients).toEqual(was)
})

test('class and E number of a part stay, and what it leaves unsaid is as the ingredient of that name has it', () => {
  const additive = { additiveClass: 'emulsifier' as const, eNumber: 'E 471' }
  const whole = [
    { of: 'nut paste', name: 'fat', sharePct: 99 },
    { of: 'nut paste', name: 'glycerides', sharePct: 1, ...additive },
  ]
  expect(opened(lines, whole).at(-1)).toMatchObject({ name: 'glycerides', massG: 2, ...additive })
  const unsaid = [whole[0]!, { of: 'nut paste', name: 'glycerides', sharePct: 1 }]
  expect(opened([...lines, { name: 'glycerides', massG: 3, ...additive }], unsaid)).toContainEqual(
    expect.objectContaining({ massG: 5, ...additive }),
  )
})

test('over any masses and shares what comes out weighs what went in', () =>
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 50 }), { minLength: 1, maxLength: 8 }),
      fc.double({ min: 0.1, max: 1e5, noNaN: true }),
      (weights, massG) => {
        const sum = weights.reduce((a, b) => a + b, 0)
        const list = opened(
          [
            { name: 'p0', massG: 7 },
            { name: 'mix', massG, isOpened: true },
          ],
          weights.map((one, i) => ({ of: 'mix', name: `p${i}`, sharePct: (100 * one) / sum })),
        )
        expect(list.reduce((all, one) => all + one.massG, 0)).toBeCloseTo(
          7 + massG,
          6 - Math.ceil(Math.log10(massG + 7)),
        )
        expect(list.map(({ name }) => name)).toEqual(weights.map((_one, i) => `p${i}`))
      },
    ),
  ))

const salt = { of: 'nut paste', name: 'salt', sharePct: 1 }
test.each<[string, string, LabelLine[], LabelPart[], LabelAllergen[]]>([
  ['a mix without parts', 'parts-not-in-full', lines, [], []],
  ['a mix whose parts are not all given', 'parts-not-in-full', lines, parts.slice(1), []],
  ['added water', 'only-a-mix-opens', [{ ...paste, isAddedWater: true }], parts, []],
  [
    'an additive, whose class would be lost',
    'only-a-mix-opens',
    [{ ...paste, additiveClass: 'raising-agent' }],
    parts,
    [],
  ],
  ['a spirit, of which less is left', 'only-a-mix-opens', [{ ...paste, leftInBreadG: 20 }], parts, []],
  ['a mix within itself', 'mix-within-mix', [paste], [{ of: 'nut paste', name: 'NUT paste', sharePct: 100 }], []],
  [
    'mixes within each other',
    'mix-within-mix',
    [paste, { ...paste, name: 'b' }],
    [
      { of: 'nut paste', name: 'b', sharePct: 100 },
      { of: 'b', name: 'nut paste', sharePct: 100 },
    ],
    [],
  ],
  [
    'an allergen said of the mix alone',
    'allergen-of-whole-mix',
    lines,
    parts,
    [{ of: 'nut paste', allergen: 'hazelnuts' }],
  ],
  [
    'one of two allergens said of the mix alone',
    'allergen-of-whole-mix',
    lines,
    parts,
    [
      { of: 'nut paste', allergen: 'hazelnuts' },
      { of: 'nut paste', allergen: 'milk' },
      { of: 'hazelnuts', allergen: 'hazelnuts' },
    ],
  ],
  [
    'a part of another class than the line of its name',
    'lines-disagree',
    lines,
    [{ ...parts[0]!, additiveClass: 'sweetener' }, parts[1]!],
    [],
  ],
  [
    'a part that is water where the line of its name is not',
    'lines-disagree',
    lines,
    [{ ...parts[0]!, isAddedWater: true }, parts[1]!],
    [],
  ],
])('%s is not opened', (_what, reason, given, of, allergens) =>
  expect(() => opened(given, of, allergens)).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({
        field: `lines[${given.findIndex(({ isOpened }) => isOpened)}].isOpened`,
        reason,
      }),
    }),
  ),
)

test('a specification that is rounded is whole from 99.5 %', () => {
  const rounded = [{ ...salt, sharePct: 39.5 }, parts[1]!]
  expect(opened(lines, rounded)).toHaveLength(3)
  expect(() => opened(lines, [{ ...salt, sharePct: 39.4 }, parts[1]!])).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'parts-not-in-full' }) }),
  )
})
