import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { changesCost, type PieceCost } from '@/lib/kitchen/formulas/changes-cost'

const piece = (minor: string | null, flourG = 500, currency: string | null = 'EUR'): PieceCost => ({
  massesG: new Map([['flour', flourG]]),
  perPieceMinor: minor === null ? null : new Decimal(minor),
  currency,
})

describe('a change of cost', () => {
  it('is one beyond the limit, either way, and not at it', () => {
    expect(changesCost(piece('100'), piece('101', 505), 1)).toBe(false)
    expect(changesCost(piece('100'), piece('101.0001', 505), 1)).toBe(true)
    expect(changesCost(piece('100'), piece('99', 495), 1)).toBe(false)
    expect(changesCost(piece('100'), piece('98.9999', 495), 1)).toBe(true)
    expect(changesCost(piece('100'), piece('100.0001', 501), 0)).toBe(true)
  })

  it('is also a cost that nobody knows, or in another currency, but never the same things in the same masses', () => {
    expect(changesCost(piece('100'), piece(null, 505), 50)).toBe(true)
    expect(changesCost(piece(null), piece('100', 505), 50)).toBe(true)
    expect(changesCost(piece('100'), piece('100', 505, 'GBP'), 50)).toBe(true)
    expect(changesCost(piece(null), piece(null), 0)).toBe(false)
    const other: PieceCost = {
      ...piece('100'),
      massesG: new Map([
        ['flour', 500],
        ['malt', 1],
      ]),
    }
    expect(changesCost(piece(null), { ...other, perPieceMinor: null }, 50)).toBe(true)
  })

  it('from nothing to something is one, however high the limit', () => {
    expect(changesCost(piece('0'), piece('0.1', 505), 100)).toBe(true)
    expect(changesCost(piece('0'), piece('0', 505), 0)).toBe(false)
  })

  it('asks of the cost of today whether it lies within the limit around the one before', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e6 }),
        fc.integer({ min: 0, max: 2e6 }),
        fc.integer({ min: 0, max: 100 }),
        (before, after, limitPct) => {
          const expected = 100 * Math.abs(after - before) > limitPct * before
          expect(changesCost(piece(String(before)), piece(String(after), 505), limitPct)).toBe(expected)
        },
      ),
      { seed: 20260302 },
    )
  })
})
