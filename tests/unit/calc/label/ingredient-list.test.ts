import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ingredientList } from '@/lib/calc/label/ingredient-list'

const q = {
  lines: [
    { name: 'salt', massG: 20 },
    { name: 'wheat flour', massG: 1000 },
    { name: 'water', massG: 600, isAddedWater: true },
    { name: 'bread mix', massG: 100 },
    { name: 'yeast', massG: 25 },
  ],
  parts: [
    { of: 'bread mix', name: 'whey powder', sharePct: 30 },
    { of: 'bread mix', name: 'malted barley flour', sharePct: 69 },
    { of: 'bread mix', name: 'E 300', sharePct: 1, additiveClass: 'flour-treatment-agent' as const },
  ],
  allergens: [
    { of: 'wheat flour', allergen: 'wheat' as const },
    { of: 'whey powder', allergen: 'milk' as const },
    { of: 'malted barley flour', allergen: 'barley' as const },
  ],
  bakedMassG: 1545,
  region: 'eu' as const,
}

test('it descends by mass, opens up the mix in its own order, and makes allergens stand out', () => {
  const list = ingredientList(q)
  expect(list.entries.map(({ place, name, inside, isEmphasised }) => [place, name, inside, isEmphasised])).toEqual([
    [1, 'wheat flour', null, true],
    [2, 'water', null, false],
    [3, 'bread mix', null, false],
    [4, 'malted barley flour', 'bread mix', true],
    [5, 'whey powder', 'bread mix', true],
    [6, 'E 300', 'bread mix', false],
    [7, 'yeast', null, false],
    [8, 'salt', null, false],
  ])
  expect(list.addedWaterG).toBe(400)
  expect(list.entries[5]).toMatchObject({ additiveClass: 'flour-treatment-agent', massG: 1 })
  expect(list.entries.filter(({ mayStandLast }) => mayStandLast).map(({ name }) => name)).toEqual(['yeast', 'salt'])
  expect(list.isDraft).toBe(true)
  expect(list.cautions).toContain('draft-for-competent-person')
})

test('in the United States water counts as weighed in, and barley is not on the list', () => {
  const list = ingredientList({ ...q, region: 'us' })
  expect(list.addedWaterG).toBe(600)
  expect(list.allergens.map(({ named }) => named)).toEqual(['wheat', 'milk'])
})

test('water that baking leaves no more than 5 % of is left out, also when nothing is left of it', () => {
  expect(ingredientList({ ...q, bakedMassG: 1200 })).toMatchObject({ isWaterLeftOut: true, addedWaterG: 55 })
  const dry = ingredientList({ ...q, bakedMassG: 1100 })
  expect(dry).toMatchObject({ isWaterLeftOut: true, addedWaterG: 0 })
  expect(dry.entries.some(({ name }) => name === 'water')).toBe(false)
})

test('no allergen said is not the same as none, and missing parts are spoken of', () => {
  const list = ingredientList({ ...q, parts: q.parts.slice(0, 1), allergens: [] })
  expect(list.cautions).toEqual(expect.arrayContaining(['no-allergens-given', 'parts-do-not-add-up']))
})

test('the order of the lines does not matter, no ingredient but water is lost, and masses never rise', () =>
  fc.assert(
    fc.property(
      fc.shuffledSubarray(q.lines, { minLength: q.lines.length }),
      fc.double({ min: 1145, max: 1745, noNaN: true }),
      (lines, bakedMassG) => {
        const list = ingredientList({ ...q, lines, bakedMassG })
        const names = list.entries.map(({ name }) => name)
        expect([...names, ...(list.isWaterLeftOut ? ['water'] : [])].sort()).toEqual(
          [...lines, ...q.parts].map(({ name }) => name).sort(),
        )
        const outer = list.entries.filter(({ inside }) => inside === null).map(({ massG }) => massG)
        expect(outer).toEqual([...outer].sort((a, b) => b - a))
      },
    ),
  ))

test('more bread than dough, and none, are refused', () => {
  expect(() => ingredientList({ ...q, bakedMassG: 1746 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'bakedMassG' }) }),
  )
  expect(() => ingredientList({ ...q, bakedMassG: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
})

test('every ingredient that nobody has judged for allergens is named, however many others were', () => {
  const list = ingredientList(q)
  expect(list.withoutStatement).toEqual(['salt', 'water', 'E 300', 'yeast'])
  expect(list.cautions).toContain('some-allergens-not-given')
  const none = ['salt', 'Water', 'yeast', 'E 300'].map((of) => ({ of, allergen: 'none' as const }))
  const whole = ingredientList({ ...q, allergens: [...q.allergens, ...none] })
  expect(whole.withoutStatement).toEqual([])
  expect(whole.cautions).not.toContain('some-allergens-not-given')
  expect(whole.allergens).toEqual(list.allergens)
})

test('a mix is not judged by one of its parts', () => {
  const allergens = q.allergens.filter(({ of }) => of !== 'malted barley flour')
  expect(ingredientList({ ...q, allergens }).withoutStatement).toContain('malted barley flour')
})

test('none and an allergen of one ingredient contradict each other', () =>
  expect(() => ingredientList({ ...q, allergens: [...q.allergens, { of: 'Wheat flour', allergen: 'none' }] })).toThrow(
    expect.objectContaining({
      facts: expect.objectContaining({ field: 'allergens[3].allergen', reason: 'lines-disagree' }),
    }),
  ))

test('names that differ in case or white space are one ingredient, under its first spelling', () => {
  const lines = [
    { name: 'Wheat flour', massG: 400 },
    { name: ' wheat  FLOUR', massG: 600 },
    ...q.lines.filter(({ name }) => name !== 'wheat flour'),
  ]
  const list = ingredientList({ ...q, lines })
  expect(list.entries[0]).toMatchObject({ name: 'Wheat flour', massG: 1000, isEmphasised: true })
  expect(list.entries).toHaveLength(8)
})

const openedMix = {
  ...q,
  lines: q.lines.map((line) => (line.name === 'bread mix' ? { ...line, isOpened: true } : line)),
}

test('an opened mix is gone from the list, its parts are in it, and nothing said of allergens or additives is lost', () => {
  for (const region of ['eu', 'us'] as const) {
    const [inBrackets, opened] = [ingredientList({ ...q, region }), ingredientList({ ...openedMix, region })]
    expect(opened.entries.map(({ name }) => name)).toEqual([
      'wheat flour',
      'water',
      'malted barley flour',
      'whey powder',
      'yeast',
      'salt',
      'E 300',
    ])
    expect(opened.entries.every(({ inside, place }, i) => inside === null && place === i + 1)).toBe(true)
    const { allergens, cautions, withoutStatement, containsSentence, addedWaterG } = inBrackets
    expect(opened).toMatchObject({ allergens, cautions, containsSentence, addedWaterG })
    expect([...opened.withoutStatement].sort()).toEqual([...withoutStatement].sort())
    const marks = (list: typeof opened) =>
      new Map(
        list.entries.map(({ name, isEmphasised, additiveClass, sayAs }) => [
          name,
          { isEmphasised, additiveClass, sayAs },
        ]),
      )
    for (const [name, mark] of marks(opened)) expect(marks(inBrackets).get(name)).toEqual(mark)
  }
})

test('what an opened mix holds may be in any of its parts, so each is asked about; none said of it holds for each', () => {
  const others = q.allergens.filter(({ of }) => of === 'wheat flour' || of === 'whey powder')
  const milk = ingredientList({ ...openedMix, allergens: [...others, { of: 'bread mix', allergen: 'milk' }] })
  expect(milk.withoutStatement).toContain('malted barley flour')
  const none = ingredientList({
    ...openedMix,
    allergens: [
      { of: 'wheat flour', allergen: 'wheat' },
      { of: 'bread mix', allergen: 'none' },
    ],
  })
  expect(none.withoutStatement).toEqual(['salt', 'water', 'yeast'])
})

test('none of a mix and an allergen of one of its parts contradict each other', () =>
  expect(() => ingredientList({ ...q, allergens: [...q.allergens, { of: 'bread mix', allergen: 'none' }] })).toThrow(
    expect.objectContaining({ facts: { field: 'allergens', value: 'whey powder', reason: 'lines-disagree' } }),
  ))

test('water that an opened mix brings is water: the bread less all else, whichever way it came in', () => {
  const lines = [
    { name: 'flour', massG: 1000 },
    { name: 'water', massG: 500, isAddedWater: true },
    { name: 'paste', massG: 200, isOpened: true },
  ]
  const parts = [
    { of: 'paste', name: 'Water', sharePct: 60 },
    { of: 'paste', name: 'oil', sharePct: 40 },
  ]
  const list = ingredientList({ lines, parts, allergens: [], bakedMassG: 1480, region: 'eu' })
  expect(list.addedWaterG).toBe(400)
  expect(list.entries.map(({ name, massG }) => [name, massG])).toEqual([
    ['flour', 1000],
    ['water', 400],
    ['oil', 80],
  ])
  expect(ingredientList({ lines, parts, allergens: [], bakedMassG: 1480, region: 'us' }).addedWaterG).toBe(620)
  const alone = ingredientList({
    lines: [lines[0]!, lines[2]!],
    parts: [{ ...parts[0]!, isAddedWater: true }, parts[1]!],
    allergens: [],
    bakedMassG: 1130,
    region: 'eu',
  })
  expect(alone).toMatchObject({ addedWaterG: 50, isWaterLeftOut: true })
  const counted = ingredientList({
    lines: [lines[0]!, lines[2]!],
    parts: [{ ...parts[0]!, isAddedWater: true }, parts[1]!],
    allergens: [],
    bakedMassG: 1150,
    region: 'eu',
  })
  expect(counted).toMatchObject({ addedWaterG: 70, isWaterLeftOut: false })
})

test('what is volatile counts by what is left of it in the EU, and water by the rest; as weighed in in the United States', () => {
  const lines = [
    { name: 'flour', massG: 1000 },
    { name: 'rum', massG: 60, leftInBreadG: 15 },
    { name: 'water', massG: 400, isAddedWater: true },
    { name: 'salt', massG: 20 },
  ]
  const eu = ingredientList({ lines, parts: [], allergens: [], bakedMassG: 1335, region: 'eu' })
  expect(eu.addedWaterG).toBe(300)
  expect(eu.entries.map(({ name, massG }) => [name, massG])).toEqual([
    ['flour', 1000],
    ['water', 300],
    ['salt', 20],
    ['rum', 15],
  ])
  expect(
    ingredientList({ lines, parts: [], allergens: [], bakedMassG: 1335, region: 'us' }).entries.map(({ name }) => name),
  ).toEqual(['flour', 'water', 'rum', 'salt'])
})

test.each([
  ['more left than went in', { name: 'rum', massG: 10, leftInBreadG: 11 }, { code: 'out-of-range' }],
  [
    'what is left of added water',
    { name: 'water', massG: 10, isAddedWater: true, leftInBreadG: 5 },
    { facts: expect.objectContaining({ reason: 'water-is-worked-out' }) },
  ],
  [
    'a number without its class',
    { name: 'ascorbic acid', massG: 10, eNumber: 'E 300' },
    { facts: expect.objectContaining({ field: 'lines[5].eNumber', reason: 'number-without-class' }) },
  ],
  [
    'a mix opened on one line and not on the other',
    { name: 'bread mix', massG: 10, isOpened: true },
    { facts: expect.objectContaining({ reason: 'lines-disagree' }) },
  ],
])('%s is refused', (_what, line, error) =>
  expect(() => ingredientList({ ...q, lines: [...q.lines, line] })).toThrow(expect.objectContaining(error)),
)

test('below 2 % an exempt mix may keep its list to itself, but for additives, allergens and what nobody judged', () => {
  const mix = (massG: number, exemptMix?: 'spices-or-herbs') =>
    ingredientList({
      ...q,
      lines: q.lines.map((line) =>
        line.name === 'bread mix' ? { ...line, massG, ...(exemptMix && { exemptMix }) } : line,
      ),
      parts: [
        ...q.parts.map((part) => ({ ...part, sharePct: part.sharePct / 2 })),
        { of: 'bread mix', name: 'cumin', sharePct: 25 },
        { of: 'bread mix', name: 'fennel', sharePct: 25 },
      ],
      allergens: [...q.allergens, { of: 'cumin', allergen: 'none' }, { of: 'E 300', allergen: 'none' }],
    })
  const left = (list: ReturnType<typeof mix>) =>
    list.entries.filter(({ mayBeLeftOut }) => mayBeLeftOut).map(({ name }) => name)
  expect(left(mix(20, 'spices-or-herbs'))).toEqual(['cumin'])
  expect(left(mix(20))).toEqual([])
  expect(left(mix(31, 'spices-or-herbs'))).toEqual([])
  expect(mix(20, 'spices-or-herbs').entries).toHaveLength(10)
})

test('in the United States the sentence has all that the draft has, each kind of fish, and the list has the sources', () => {
  const list = ingredientList({
    ...q,
    allergens: [
      ...q.allergens,
      { of: 'yeast', allergen: 'fish', species: ' anchovy ' },
      { of: 'yeast', allergen: 'fish', species: 'cod' },
      { of: 'salt', allergen: 'crustaceans' },
    ],
    region: 'us',
  })
  expect(list.containsSentence).toBe('Contains: milk, anchovy, cod, crustacean shellfish, wheat.')
  expect(list.entries.map(({ name, sourceInBrackets }) => [name, sourceInBrackets])).toEqual(
    expect.arrayContaining([
      ['wheat flour', 'wheat'],
      ['whey powder', 'milk'],
      ['yeast', 'anchovy, cod'],
      ['malted barley flour', null],
    ]),
  )
  expect(list.cautions).toEqual(
    expect.arrayContaining([
      'species-not-given',
      'not-on-us-list',
      'one-way-for-us-allergens',
      'draft-for-competent-person',
      'local-rules-decide',
    ]),
  )
  expect(ingredientList(q)).toMatchObject({ containsSentence: null, lastUpToPct: null })
  expect(ingredientList(q).cautions).not.toContain('one-way-for-us-allergens')
})

test('a kind is asked of fish and shellfish only', () =>
  expect(() => ingredientList({ ...q, allergens: [{ of: 'salt', allergen: 'milk', species: 'cow' }] })).toThrow(
    expect.objectContaining({ facts: { field: 'allergens[0].species', value: 'cow', reason: 'no-species-asked' } }),
  ))

test('nothing that must be in the list gets out of it by being marked as added water', () => {
  const whey = { name: 'whey', massG: 200, isAddedWater: true }
  const lines = [...q.lines, whey]
  const refused = expect.objectContaining({
    facts: { field: 'lines[5].name', value: 'whey', reason: 'water-holds-more' },
  })
  expect(() =>
    ingredientList({ ...q, lines, allergens: [...q.allergens, { of: 'Whey', allergen: 'milk' }], bakedMassG: 1200 }),
  ).toThrow(refused)
  expect(() =>
    ingredientList({ ...q, lines, parts: [...q.parts, { of: 'whey', name: 'lactose', sharePct: 5 }] }),
  ).toThrow(refused)
  expect(() => ingredientList({ ...q, lines: [...q.lines, { ...whey, additiveClass: 'acid' }] })).toThrow(refused)
})
