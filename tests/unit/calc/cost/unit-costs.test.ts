import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { unitCosts } from '@/lib/calc/cost/unit-costs'

const q = { totalMinor: new Decimal(1000), plannedPieces: 10, goodPieces: 8, goodMassG: 4000, goodVolumeMl: 16_000 }

test('good pieces carry the cost of the ones that were not', () => {
  const result = unitCosts(q)
  expect(result.perPlannedPieceMinor.toString()).toBe('100')
  expect(result.perGoodPieceMinor.toString()).toBe('125')
  expect(result.perKgMinor.toString()).toBe('250')
  expect(result.perLitreMinor.toString()).toBe('62.5')
})
test('no good piece has no cost, and more good than planned is a slip', () => {
  for (const goodPieces of [0, 11, 7.5]) {
    expect(() => unitCosts({ ...q, goodPieces })).toThrow(
      expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'goodPieces' }) }),
    )
  }
})
