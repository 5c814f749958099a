import fc from 'fast-check'
import { expect, test } from 'vitest'
import { doughMassForPiecesG } from '@/lib/calc/formula/dough-mass-for-pieces'
import { forLong } from '@/tests/support/long'

const share = fc.double({ min: 0, max: 0.3, noNaN: true })

test('without losses the dough is pieces times mass, in every convention', () => {
  for (const on of ['dough', 'baked'] as const)
    for (const combine of ['added', 'compounded'] as const)
      expect(doughMassForPiecesG({ pieces: 12, pieceMassG: 450, lossShares: [], losses: { on, combine } })).toBe(5400)
})

test('taking the losses off again leaves the pieces', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 500 }),
      fc.double({ min: 20, max: 2000, noNaN: true }),
      share,
      share,
      (pieces, pieceMassG, a, b) => {
        const of = (combine: 'added' | 'compounded') =>
          doughMassForPiecesG({ pieces, pieceMassG, lossShares: [a, b], losses: { on: 'dough', combine } })
        expect(of('compounded') * (1 - a) * (1 - b)).toBeCloseTo(pieces * pieceMassG, 5)
        expect(of('added') * (1 - a - b)).toBeCloseTo(pieces * pieceMassG, 5)
        expect(of('added')).toBeGreaterThanOrEqual(of('compounded') * (1 - 1e-12))
      },
    ),
    { seed: 1702, numRuns: forLong(200, 4_000) },
  )
})

test('one and the same loss is another share of dough than of bread', () => {
  const q = { pieces: 1, pieceMassG: 900, lossShares: [0.1] }
  expect(doughMassForPiecesG({ ...q, losses: { on: 'dough', combine: 'added' } })).toBeCloseTo(1000, 9)
  expect(doughMassForPiecesG({ ...q, losses: { on: 'baked', combine: 'added' } })).toBeCloseTo(990, 9)
})

test('losses that leave nothing are refused', () => {
  const q = { pieces: 1, pieceMassG: 900, lossShares: [0.6, 0.5] }
  expect(() => doughMassForPiecesG({ ...q, losses: { on: 'dough', combine: 'added' } })).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ reason: 'losses-leave-nothing' }),
    }),
  )
  expect(() => doughMassForPiecesG({ ...q, pieces: 1.5, losses: { on: 'dough', combine: 'added' } })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
