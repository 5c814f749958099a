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
test('what is not stated is named, and closure is not judged without it', () =>
  expect(compositionWarnings('x', { ...full, ashPct: null })).toEqual([{ code: 'not-stated', field: 'x.ashPct' }]))
test('an impossible value is refused at its field', () =>
  expect(() => compositionWarnings('x', { ...full, fatPct: 101 })).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'x.fatPct' }) }),
  ))
