import { expect, test } from 'vitest'
import { statedComposition } from '@/lib/calc/formula/stated-composition'

test('what is not given is not stated, and a zero stays a zero', () => {
  expect(statedComposition({ waterPct: 87.5, fatPct: 0 })).toEqual({
    waterPct: 87.5,
    proteinPct: null,
    fatPct: 0,
    carbohydratePct: null,
    sugarsPct: null,
    fibrePct: null,
    ashPct: null,
    sodiumMgPer100g: null,
  })
})
