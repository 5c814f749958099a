import { expect, test } from 'vitest'
import { compositionWarnings } from '@/lib/calc/formula/composition-warnings'

const full = {
  waterPct: 13,
  proteinPct: 12,
  fatPct: 2,
  carbohydratePct: 72.5,
  sugarsPct: 0.3,
  fibrePct: 2.4,
  ashPct: 0.5,
  sodiumMgPer100g: 2,
}

test('a row that closes has no warnings', () => expect(compositionWarnings('flour', full)).toEqual([]))
test('a row that does not close is warned of, with its sum', () =>
  expect(compositionWarnings('x', { ...full, waterPct: 5 })).toEqual([{ code: 'not-closed', field: 'x', value: 92 }]))
test('sugars and fibre above carbohydrate are warned of', () =>
  expect(compositionWarnings('x', { ...full, sugarsPct: 80, fibrePct: 73 }).map((w) => w.code)).toEqual([
    'sugars-above-carbohydrate',
    'fibre-above-carbohydrate',
  ]))
test('a row typed as shares is warned of, also where parts are missing', () => {
  const shares = { ...full, waterPct: 0.13, proteinPct: 0.12, fatPct: 0.02, carbohydratePct: 0.725, ashPct: 0.005 }
  expect(compositionWarnings('flour', shares).map((w) => w.code)).toEqual([
    'looks-like-share',
    'fibre-above-carbohydrate',
  ])
  expect(
    compositionWarnings('butter', {
      ...full,
      waterPct: 0.16,
      fatPct: 0.82,
      proteinPct: null,
      carbohydratePct: null,
      ashPct: null,
    })[0]?.code,
  ).toBe('not-stated')
  expect(
    compositionWarnings('butter', {
      ...full,
      waterPct: 0.16,
      fatPct: 0.82,
      proteinPct: null,
      carbohydratePct: null,
      ashPct: null,
    }).map((w) => w.code),
  ).toContain('looks-like-share')
  const oil = {
    ...full,
    waterPct: 0,
    proteinPct: 0,
    fatPct: 100,
    carbohydratePct: 0,
    ashPct: 0,
    sugarsPct: 0,
    fibrePct: 0,
  }
  expect(compositionWarnings('oil', oil)).toEqual([])
})
test('parts that make more than 100 are warned of, also where others are not stated', () =>
  expect(compositionWarnings('x', { ...full, ashPct: null, waterPct: 60 }).map((w) => w.code)).toEqual([
    'not-stated',
    'not-closed',
  ]))
test('what is not stated is named, and closure is not judged without it', () =>
  expect(compositionWarnings('x', { ...full, ashPct: null })).toEqual([{ code: 'not-stated', field: 'x.ashPct' }]))
test('an impossible value is refused at its field', () =>
  expect(() => compositionWarnings('x', { ...full, fatPct: 101 })).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'x.fatPct' }) }),
  ))
