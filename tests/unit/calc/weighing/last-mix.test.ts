import fc from 'fast-check'
import { expect, test } from 'vitest'
import { lastMix } from '@/lib/calc/weighing/last-mix'
import { mixStep, PURE } from '@/lib/calc/weighing/mix-step'
import { portionRoute } from '@/lib/calc/weighing/portion-route'
import { readyScales } from '@/lib/calc/weighing/ready-scales'
import { weighableMassesG } from '@/lib/calc/weighing/weighable-masses'
import { forLong } from '@/tests/support/long'

const scales = readyScales([
  { id: 'fine', resolutionG: 0.1, repeatabilityG: 0.03, capacityG: 4 },
  { id: 'coarse', resolutionG: 1, repeatabilityG: 0.2, capacityG: 60 },
])

test('it is the least premix that trying every take and every carrier would find', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0.05, max: 3, noNaN: true }),
      fc.double({ min: 0.03, max: 0.5, noNaN: true }),
      fc.integer({ min: 1, max: 60 }),
      (doseG, errorShare, mostCarrierG) => {
        const aim = { doseG, errorShare, coverageFactor: 2, mostCarrierG, mostPremixG: 80 }
        const masses = (leastG: number) => weighableMassesG({ scales, leastG, mostG: 80, mostPerScale: 1000 })
        const takesG = masses(doseG)
        let leastG = Infinity
        for (const takeG of takesG) {
          for (const carrierG of masses(0.01)) {
            const made = takeG + carrierG <= 80 ? mixStep(scales, PURE, takeG, carrierG) : null
            const route = made === null ? null : portionRoute(aim, scales, made)
            if (route !== null && route.errorShare <= errorShare) leastG = Math.min(leastG, route.premixMadeG)
          }
        }
        const found = lastMix(aim, scales, PURE, takesG)
        expect(found?.premixMadeG ?? Infinity).toBeCloseTo(leastG, 9)
      },
    ),
    { numRuns: forLong(60, 600) },
  ))
