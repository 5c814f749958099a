import { expect, test } from 'vitest'
import { costDifference } from '@/lib/calc/cost/cost-difference'
import { Decimal } from '@/lib/calc/cost/decimal'

const of = (control: string, arm: string) =>
  costDifference({ controlMinor: new Decimal(control), armMinor: new Decimal(arm) })
test('arm less control, on the control', () => {
  expect(of('100', '103').differenceMinor.toString()).toBe('3')
  expect(of('80', '60').differencePct?.toString()).toBe('-25')
})
test('a control that costs nothing has no percentage', () => expect(of('0', '3').differencePct).toBeNull())
