import { expect, test } from 'vitest'
import { estimateCurve } from '@/lib/calc/dose-response/estimate-curve'
import { expectRefusal } from '@/tests/support/arm-rows'
import { aboutCurve, saturated } from '@/tests/support/dose-rows'

const q = { model: 'saturating' as const, confidence: 0.95 }
const reasons = (ed50: number, off: number, doses?: number[]) =>
  estimateCurve({ ...q, rows: aboutCurve(saturated(100, 40, ed50), off, doses) }).notClaimed

test('a saturating curve is claimed from dough without, three doses and an interval with an end', () => {
  expect(reasons(1, 1)).toEqual([])
  expect(reasons(1, 1, [0.5, 1, 2, 8])).toContain('no-zero-dose')
  expect(reasons(1, 1, [0, 1, 4])).toContain('fewer-than-three-doses')
  expect(reasons(9, 4)).toEqual(['interval-not-bounded'])
})
test('a start that was given does not stand in for dough without the ingredient', () => {
  const rows = aboutCurve(saturated(100, 40, 1), 1, [0.5, 1, 2, 8])
  expect(estimateCurve({ ...q, rows, fixedE0: 100 }).notClaimed).toEqual(['no-zero-dose'])
})
test('a given start is for the saturating curve only, and a confidence is a share', () => {
  const rows = aboutCurve((dose) => dose, 1)
  expectRefusal(() => estimateCurve({ ...q, model: 'linear', rows, fixedE0: 0 }), 'wrong-shape', 'only-for-saturating')
  expectRefusal(() => estimateCurve({ ...q, rows, fixedE0: NaN }), 'not-finite')
  expectRefusal(() => estimateCurve({ ...q, rows, confidence: 95 }), 'out-of-range')
})
