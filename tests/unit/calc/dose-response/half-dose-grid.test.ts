import { expect, test } from 'vitest'
import { doseGroups } from '@/lib/calc/dose-response/dose-groups'
import { halfDoseGrid } from '@/lib/calc/dose-response/half-dose-grid'

test('the search reaches from a thousandth of the lowest dose to a thousand times the highest, in even steps of logs', () => {
  const grid = halfDoseGrid(doseGroups([0, 0.5, 8].map((dose) => ({ dose, y: dose }))))
  expect(Math.exp(grid[0]!)).toBeCloseTo(0.0005, 12)
  expect(Math.exp(grid.at(-1)!)).toBeCloseTo(8000, 6)
  expect(grid[1]! - grid[0]!).toBeCloseTo(grid.at(-1)! - grid.at(-2)!, 12)
  expect(grid[1]! - grid[0]!).toBeLessThan(0.1)
})
