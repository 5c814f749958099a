import fc from 'fast-check'
import { expect, test } from 'vitest'
import { breakEvenPrice } from '@/lib/calc/cost/break-even-price'
import { Decimal } from '@/lib/calc/cost/decimal'
import { forLong } from '@/tests/support/long'

test('at the break-even price the arm costs the control and its gain', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 500 }),
      fc.integer({ min: 0, max: 50 }),
      fc.integer({ min: 1, max: 400 }),
      fc.integer({ min: 1, max: 5000 }),
      (control, gain, pieces, addedMassG) => {
        const rest = new Decimal(control).times(pieces).times('0.97')
        const result = breakEvenPrice({
          controlPerGoodPieceMinor: new Decimal(control),
          gainPerGoodPieceMinor: new Decimal(gain),
          armRestMinor: rest,
          armGoodPieces: pieces,
          addedMassG,
        })
        if (result.outcome !== 'price') throw new Error(result.outcome)
        const armPerPiece = rest.plus(result.perKgMinor.times(addedMassG).dividedBy(1000)).dividedBy(pieces)
        expect(
          armPerPiece
            .minus(control + gain)
            .abs()
            .toNumber(),
        ).toBeLessThan(1e-25)
      },
    ),
    { seed: 1761, numRuns: forLong(200, 4_000) },
  )
})
test('when the rest alone costs more than control and gain, no price pays', () => {
  const result = breakEvenPrice({
    controlPerGoodPieceMinor: new Decimal(100),
    gainPerGoodPieceMinor: new Decimal(2),
    armRestMinor: new Decimal(1050),
    armGoodPieces: 10,
    addedMassG: 5,
  })
  expect(result).toMatchObject({ outcome: 'never' })
  expect(result.outcome === 'never' ? result.shortMinor.toString() : '').toBe('30')
})
