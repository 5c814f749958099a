import { expect, test } from 'vitest'
import { doseGroups } from '@/lib/calc/dose-response/dose-groups'
import { fitPolynomial } from '@/lib/calc/dose-response/fit-polynomial'
import { lackOfFit } from '@/lib/calc/dose-response/lack-of-fit'
import { aboutCurve } from '@/tests/support/dose-rows'

const lineThrough = (curve: (dose: number) => number, off: number, doses?: number[]) => {
  const data = doseGroups(aboutCurve(curve, off, doses))
  return lackOfFit(data, fitPolynomial(data, 'linear'))
}

test('a line through a bend misses, a line through a line does not', () => {
  expect(lineThrough((dose) => 10 * Math.sqrt(dose), 0.5)!.p).toBeLessThan(0.01)
  expect(lineThrough((dose) => 10 * dose, 0.5)!.p).toBeGreaterThan(0.99)
})
test('without a second value at a dose, a dose to spare or a difference between values it is left out', () => {
  expect(lineThrough((dose) => dose, 1, [1, 2])).toBeNull()
  expect(lineThrough((dose) => dose * dose, 0)).toBeNull()
  const once = doseGroups([0, 1, 2, 3].map((dose) => ({ dose, y: dose * dose })))
  expect(lackOfFit(once, fitPolynomial(once, 'linear'))).toBeNull()
})
