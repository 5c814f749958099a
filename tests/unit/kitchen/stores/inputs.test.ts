import { describe, expect, it } from 'vitest'
import type { z } from 'zod'
import { problemsOfInput } from '@/lib/kitchen/problems-of-input'
import { addEquipmentInput } from '@/lib/kitchen/stores/add-equipment.input'
import { addIngredientInput } from '@/lib/kitchen/stores/add-ingredient.input'
import { changeEquipmentInput } from '@/lib/kitchen/stores/change-equipment.input'
import { enterPriceInput } from '@/lib/kitchen/stores/enter-price.input'

function faults(schema: z.ZodType, raw: unknown): string[] {
  const read = schema.safeParse(raw, { reportInput: true })
  return read.success ? [] : problemsOfInput(read.error).map(({ path, code }) => `${path}:${code}`)
}

const id = '0197a000-0000-7000-8000-000000000001'

describe('an ingredient', () => {
  const plain = {
    name: 'Salt',
    labelName: 'Salt',
    kind: 'salt',
    active: null,
    customary: null,
    allergens: [],
    allergenCheck: 'unknown',
    dustCaution: false,
    note: '',
    figures: {},
  }
  it('is taken with the least that is needed', () => expect(faults(addIngredientInput, plain)).toEqual([]))
  it('shows all faults at once, each at its field', () =>
    expect(
      faults(addIngredientInput, {
        ...plain,
        name: ' ',
        kind: undefined,
        active: { name: undefined, pct: 0 },
        customary: { leastPct: 'some', mostPct: 201, source: 'A sheet' },
        figures: {
          water: { gPer100G: 101, source: 'A sheet' },
          fat: { gPer100G: 3, source: undefined },
          salt: { gPer100G: undefined, source: 'A sheet' },
        },
      }),
    ).toEqual([
      'name:missing',
      'kind:missing',
      'active.name:missing',
      'active.pct:not-above',
      'customary.leastPct:not-a-number',
      'customary.mostPct:too-big',
      'figures.water.gPer100G:too-big',
      'figures.fat.source:missing',
      'figures.salt.gPer100G:missing',
    ]))
  it('has a range that runs upwards', () =>
    expect(faults(addIngredientInput, { ...plain, customary: { leastPct: 2, mostPct: 1, source: 'A sheet' } })).toEqual(
      ['customary.mostPct:below-least'],
    ))
  it('cannot be new and checked before', () =>
    expect(faults(addIngredientInput, { ...plain, allergenCheck: 'as-before' })).toEqual([
      'allergenCheck:wrong-choice',
    ]))
})

describe('a price', () => {
  const plain = { ingredientId: id, holdsFrom: '2026-03-02', packMassG: 25_000, packPrice: '18.75', supplier: 'Mill' }
  it('may be nothing, but not less', () => {
    expect(faults(enterPriceInput, { ...plain, packPrice: '0' })).toEqual([])
    expect(faults(enterPriceInput, { ...plain, packPrice: '-1' })).toEqual(['packPrice:not-an-amount'])
  })
  it.each(['1e3', '18,75', '€18', '1.23456', '123456789', '١٢'])('is no amount when it is written %s', (packPrice) =>
    expect(faults(enterPriceInput, { ...plain, packPrice })).toEqual(['packPrice:not-an-amount']),
  )
  it.each(['2026-02-30', '1999-12-31', '02/03/2026'])('does not hold from %s', (holdsFrom) =>
    expect(faults(enterPriceInput, { ...plain, holdsFrom })).toHaveLength(1),
  )
  it('is of a pack that weighs something', () =>
    expect(faults(enterPriceInput, { ...plain, packMassG: 0 })).toEqual(['packMassG:not-above']))
})

describe('equipment', () => {
  const scale = { kind: 'scale', name: 'Dose scale', note: '', resolutionG: 0.1, mostG: 3000 }
  it('is taken with the fields of its kind and no others', () => {
    expect(faults(addEquipmentInput, scale)).toEqual([])
    expect(faults(addEquipmentInput, { ...scale, decks: 3 })).toEqual(['decks:unknown-field'])
    expect(
      faults(addEquipmentInput, { kind: 'oven', name: 'Oven', note: '', decks: 2.5, placesPerDeck: undefined }),
    ).toEqual(['decks:not-whole', 'placesPerDeck:missing'])
  })
  it('has bounds that fit each other', () => {
    expect(faults(addEquipmentInput, { ...scale, resolutionG: 3000 })).toEqual(['resolutionG:not-below-most'])
    expect(faults(addEquipmentInput, { kind: 'mixer', name: 'Spiral', note: '', leastG: 5000, mostG: 5000 })).toEqual([
      'leastG:not-below-most',
    ])
    const seen = { equipmentId: id, seenRevision: 1, inUse: true }
    expect(faults(changeEquipmentInput, { ...scale, ...seen, resolutionG: 3000 })).toEqual([
      'resolutionG:not-below-most',
    ])
  })
  it('is of a kind that there is', () => expect(faults(addEquipmentInput, { ...scale, kind: 'spoon' })).toHaveLength(1))
})

describe('water for mixing', () => {
  const named = { name: 'Tap', note: '' }
  it.each([
    [{ kind: 'hot_water', ...named, tempC: 55 }, []],
    [{ kind: 'hot_water', ...named, tempC: 15 }, ['tempC:too-small']],
    [{ kind: 'hot_water', ...named, tempC: 55, limitC: 120 }, ['limitC:too-big']],
    [{ kind: 'hot_water', ...named }, ['tempC:missing']],
    [{ kind: 'chilled_water', ...named, tempC: 3 }, []],
    [{ kind: 'chilled_water', ...named, tempC: -1 }, ['tempC:too-small']],
    [{ kind: 'tap_water', ...named, tempC: 12 }, []],
    [{ kind: 'tap_water', ...named, tempC: 41 }, ['tempC:too-big']],
    [{ kind: 'ice', ...named, tempC: -18 }, []],
    [{ kind: 'ice', ...named, tempC: 4 }, ['tempC:too-big']],
  ])('%o: %o', (input, found) => expect(faults(addEquipmentInput, input)).toEqual(found))
  it('goes on a dough at 60 °C at most unless the bakery says otherwise', () =>
    expect(addEquipmentInput.parse({ kind: 'hot_water', ...named, tempC: 75 })).toMatchObject({ limitC: 60 }))
})
