import fc from 'fast-check'
import { expect, test } from 'vitest'
import { leastNetMassG } from '@/lib/calc/weighing/least-net-mass'
import { relativeDoseErrorShare } from '@/lib/calc/weighing/relative-dose-error'
import { forLong } from '@/tests/support/long'

test('at the least net mass the error is the one stated', () => {
  const positive = fc.double({ min: 0.001, max: 10, noNaN: true })
  fc.assert(
    fc.property(
      positive,
      positive,
      fc.double({ min: 0.001, max: 0.5, noNaN: true }),
      (resolutionG, repeatabilityG, errorShare) => {
        const scale = { resolutionG, repeatabilityG, coverageFactor: 2 }
        expect(relativeDoseErrorShare({ ...scale, netMassG: leastNetMassG({ ...scale, errorShare }) })).toBeCloseTo(
          errorShare,
          10,
        )
      },
    ),
    { seed: 1730, numRuns: forLong(200, 4_000) },
  )
})
