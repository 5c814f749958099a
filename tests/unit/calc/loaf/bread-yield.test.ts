import { expect, test } from 'vitest'
import { breadYieldPct } from '@/lib/calc/loaf/bread-yield'

test('without losses all dough is bread', () =>
  expect(breadYieldPct({ grossDoughYieldPct: 165, lossShare: 0 })).toBe(165))
test('dough of flour alone is no dough', () =>
  expect(() => breadYieldPct({ grossDoughYieldPct: 65, lossShare: 0 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))
