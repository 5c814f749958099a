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
    fc.property(fc.shuffledSubarray(q.lines, { minLength: q.lines.length }), fc.double({ min: 1145, max: 1745, noNaN: true }), (lines, bakedMassG) => {
      const list = ingredientList({ ...q, lines, bakedMassG })
      const names = list.entries.map(({ name }) => name)
      expect([...names, ...(list.isWaterLeftOut ? ['water'] : [])].sort()).toEqual(
        [...lines, ...q.parts].map(({ name }) => name).sort(),
      )
      const outer = list.entries.filter(({ inside }) => inside === null).map(({ massG }) => massG)
      expect(outer).toEqual([...outer].sort((a, b) => b - a))
    }),
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
    expect.objectContaining({ facts: expect.objectContaining({ field: 'allergens[3].allergen', reason: 'lines-disagree' }) }),
  ))

test('names that differ in case or white space are one ingredient, under its first spelling', () => {
  const lines = [{ name: 'Wheat flour', massG: 400 }, { name: ' wheat  FLOUR', massG: 600 }, ...q.lines.filter(({ name }) => name !== 'wheat flour')]
  const list = ingredientList({ ...q, lines })
  expect(list.entries[0]).toMatchObject({ name: 'Wheat flour', massG: 1000, isEmphasised: true })
  expect(list.entries).toHaveLength(8)
})
