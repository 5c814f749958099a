import { expect, test } from 'vitest'
import { doughYield } from '@/lib/calc/formula/dough-yield'
import { line, straightDough } from '@/tests/support/formula-samples'

test('egg counts in the gross dough yield and not in the net', () => {
  const result = doughYield(
    straightDough(line('flour', 'flour', 100), line('water', 'water', 50), line('egg', 'egg', 10)),
  )
  expect(result.netPct).toBeCloseTo(150, 12)
  expect(result.grossPct).toBeCloseTo(160, 12)
})

test('a dough without anything poured has its yield, and that is said', () =>
  expect(doughYield(straightDough(line('flour', 'flour', 100), line('egg', 'egg', 60)))).toMatchObject({
    netPct: 100,
    grossPct: 160,
    warnings: ['no-water'],
  }))
