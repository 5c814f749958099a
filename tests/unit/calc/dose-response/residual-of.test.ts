import { expect, test } from 'vitest'
import { doseGroups } from '@/lib/calc/dose-response/dose-groups'
import { residualOf } from '@/lib/calc/dose-response/residual-of'
import { expectRefusal } from '@/tests/support/arm-rows'

const data = doseGroups([
  { dose: 0, y: 1 },
  { dose: 0, y: 3 },
  { dose: 1, y: 8 },
  { dose: 2, y: 9 },
])

test('the residual is what the curve misses and what values at one dose differ', () => {
  expect(residualOf(data, 2, 2)(6)).toEqual({ lackSumSquares: 6, residualSumSquares: 8, residualDf: 2, residualSd: 2 })
})
test('too few doses, too few values and values all alike are refused', () => {
  expectRefusal(() => residualOf(data, 4, 4), 'not-possible', 'few-doses')
  expectRefusal(() => residualOf(data, 4, 3), 'not-possible', 'no-residual-df')
  const alike = doseGroups([0, 1, 2].map((dose) => ({ dose, y: 5 })))
  expectRefusal(() => residualOf(alike, 2, 2), 'not-possible', 'zero-variance')
  const onCurve = doseGroups([0, 1, 2].map((dose) => ({ dose, y: dose })))
  expectRefusal(() => residualOf(onCurve, 2, 2)(0), 'not-possible', 'zero-variance')
})
