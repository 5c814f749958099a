import { describe, expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { costAndGain, type CostedArm } from '@/lib/kitchen/results/cost-and-gain'
import type { CostedLine } from '@/lib/kitchen/stores/costed-lines'

const day = '2026-03-02'
const price = (perKgMinor: string, currency = 'EUR') => ({ validFrom: '2026-01-01', perKgMinor, currency })
const line = (ingredientId: string, massG: number, perKgMinor: string | null, isWater = false): CostedLine => ({
  ingredientId,
  name: ingredientId,
  massG,
  isWater,
  price: perKgMinor === null ? null : price(perKgMinor),
})
const arm = (change: Partial<CostedArm>): CostedArm => ({
  arm: 0,
  lines: [],
  addedIngredientId: null,
  goodPieces: [4, 4],
  loafMassG: 400,
  loafVolumeMl: 1600,
  ...change,
})
const control = arm({ lines: [line('flour', 1000, '89.5'), line('water', 600, null, true)] })
const malted = (malt: string | null, change: Partial<CostedArm> = {}) =>
  arm({
    arm: 1,
    lines: [line('flour', 994, '89.5'), line('water', 600, null, true), line('malt', 6, malt)],
    addedIngredientId: 'malt',
    goodPieces: [4, 3],
    ...change,
  })
const costs = (...arms: CostedArm[]) => costAndGain({ day, piecesPlanned: 4, arms, gainPerPiece: new Decimal(0) })
const textOf = (value: Decimal | null) => value?.toFixed() ?? null

describe('cost of an arm', () => {
  test('is exact: 89.5 cents of flour, over planned and good loaves, kg and litre', () => {
    const [own] = costs(control).arms
    expect(textOf(own!.perBatch)).toBe('89.5')
    expect(textOf(own!.perPlannedPiece)).toBe('22.375')
    expect(textOf(own!.perGoodPiece)).toBe('22.375')
    expect(textOf(own!.perKg)).toBe('55.9375')
    expect(textOf(own!.perLitre)).toBe('13.984375')
  })

  test('is spread over the loaves that were good, and set against the control', () => {
    // 994 g at 89.5 and 6 g at 650 a kg: 88.963 + 3.9 = 92.863 a dough; two doughs gave 7 good loaves.
    const [, own] = costs(control, malted('650')).arms
    expect(textOf(own!.perBatch)).toBe('92.863')
    expect(own!.perGoodPiece!.toFixed(10)).toBe(new Decimal('185.726').dividedBy(7).toFixed(10))
    expect(textOf(own!.differencePerPlannedPiece)).toBe('0.84075')
    expect(own!.good).toEqual({ pieces: 7, batches: 2 })
  })

  test('is not given while a price is missing, and the ingredient is named; water is free', () => {
    const [priced, own] = costs(control, malted(null)).arms
    expect(own).toMatchObject({ unpriced: ['malt'], perBatch: null, perGoodPiece: null, differencePerGoodPiece: null })
    expect(priced!.unpriced).toEqual([])
  })

  test('is not given in two currencies', () => {
    const foreign = malted('650')
    const { currency, arms } = costs(control, {
      ...foreign,
      lines: foreign.lines.map((each) => (each.name === 'malt' ? { ...each, price: price('650', 'GBP') } : each)),
    })
    expect(currency).toBeNull()
    expect(arms.every(({ mixedCurrencies, perBatch }) => mixedCurrencies && perBatch === null)).toBe(true)
  })

  test('per good loaf needs every dough counted, and at least one good loaf', () => {
    const uncounted = costs(arm({ ...control, goodPieces: [4, null] })).arms[0]!
    expect(uncounted).toMatchObject({ good: null, perGoodPiece: null, perKg: null })
    expect(textOf(uncounted.perPlannedPiece)).toBe('22.375')
    expect(costs(arm({ ...control, goodPieces: [0, 0] })).arms[0]!.perGoodPiece).toBeNull()
    expect(costs(arm({ ...control, goodPieces: [] })).arms[0]!.good).toBeNull()
    expect(costs(arm({ ...control, loafVolumeMl: null })).arms[0]!).toMatchObject({ perLitre: null })
  })

  test('never has a cost out of no lines', () => {
    expect(costs(arm({ lines: [] })).arms[0]!.perBatch).toBeNull()
  })
})

describe('break-even', () => {
  test('at that price a good loaf costs what the control’s does', () => {
    const [, own] = costs(control, malted('650', { goodPieces: [4, 4] })).arms
    const even = own!.breakEven!
    expect(even).toMatchObject({ outcome: 'price', ingredient: 'malt' })
    const perKg = even.outcome === 'price' ? even.perKg.toFixed() : ''
    expect(perKg).toBe('89.5')
    const [, again] = costs(control, malted(perKg, { goodPieces: [4, 4] })).arms
    expect(textOf(again!.differencePerGoodPiece)).toBe('0')
  })

  test('needs no price of the ingredient itself', () => {
    expect(costs(control, malted(null, { goodPieces: [4, 4] })).arms[1]!.breakEven).toMatchObject({ outcome: 'price' })
  })

  test('says never when a loaf costs more even as a gift', () => {
    expect(costs(control, malted('650')).arms[1]!.breakEven).toEqual({ outcome: 'never', ingredient: 'malt' })
  })

  test('rises with what a loaf is worth more', () => {
    const { arms } = costAndGain({
      day,
      piecesPlanned: 4,
      arms: [control, malted('650', { goodPieces: [4, 4] })],
      gainPerPiece: new Decimal('1.5'),
    })
    // 8 loaves of 1.5 cents over 12 g of malt are 1,000 cents a kg.
    expect(arms[1]!.breakEven).toMatchObject({ outcome: 'price' })
    expect(arms[1]!.breakEven!.outcome === 'price' && arms[1]!.breakEven!.perKg.toFixed()).toBe('1089.5')
  })

  test('is left out without one added ingredient, and for the control', () => {
    expect(costs(control, malted('650', { addedIngredientId: null })).arms.map(({ breakEven }) => breakEven)).toEqual([
      null,
      null,
    ])
  })
})
