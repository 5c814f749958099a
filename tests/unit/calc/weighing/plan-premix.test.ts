import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { planPremix } from '@/lib/calc/weighing/plan-premix'
import { fewestSteps } from '@/tests/support/fewest-premix-steps'
import { forLong } from '@/tests/support/long'

const kitchen = { id: 'kitchen', resolutionG: 1, repeatabilityG: 0.5, capacityG: 10_000 }
const fine = { id: 'fine', resolutionG: 0.01, repeatabilityG: 0.01, capacityG: 200 }
const q = { errorShare: 0.02, coverageFactor: 2, scales: [kitchen, fine], mostCarrierG: 500, mostPremixG: 5000 }

test('a dose within reach of a scale is weighed directly', () =>
  expect(planPremix({ ...q, doseG: 10 })).toMatchObject({ outcome: 'direct', portionScaleId: 'fine', productLeftG: 0 }))

test('a small dose takes one premix, with the error of all three weighings', () => {
  const plan = planPremix({ ...q, doseG: 0.2 })
  if (plan.outcome !== 'premix') throw new Error(plan.outcome)
  expect(plan.steps).toHaveLength(1)
  expect(plan.errorShare).toBeLessThanOrEqual(0.02)
  const step = plan.steps[0]
  expect(plan.portionG * (step?.productShare ?? 0)).toBeCloseTo(0.2, 12)
  expect(plan.carrierInPortionG).toBeCloseTo(plan.portionG - 0.2, 12)
})

test('a dose of milligrams on a kitchen scale takes more than one step', () => {
  const plan = planPremix({ ...q, doseG: 0.05, errorShare: 0.05, scales: [kitchen] })
  expect(plan).toMatchObject({ outcome: 'premix' })
  expect(plan.outcome === 'premix' ? plan.steps.length : 0).toBeGreaterThan(1)
})

test('what cannot be done says how near it comes', () => {
  const plan = planPremix({ ...q, doseG: 0.05, errorShare: 0.001, scales: [kitchen], mostCarrierG: 10 })
  expect(plan.outcome).toBe('not-possible')
  expect(plan.outcome === 'not-possible' ? (plan.bestErrorShare ?? 0) : 0).toBeGreaterThan(0.001)
})

describe('properties', () => {
  test('every plan keeps its limits and its masses add up', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        fc.constantFrom(0.01, 0.03, 0.1),
        fc.constantFrom([kitchen], [fine], [kitchen, fine]),
        fc.constantFrom(20, 200, 1000),
        (doseG, errorShare, scales, mostCarrierG) => {
          const plan = planPremix({ ...q, doseG, errorShare, scales, mostCarrierG })
          if (plan.outcome === 'not-possible') return
          expect(plan.errorShare).toBeLessThanOrEqual(errorShare)
          expect(plan.carrierInPortionG).toBeLessThanOrEqual(mostCarrierG)
          expect(plan.productLeftG).toBeGreaterThanOrEqual(-1e-12)
          let share = 1
          let beforeG = Infinity
          for (const step of plan.steps) {
            expect(step.takeG).toBeLessThanOrEqual(beforeG * (1 + 1e-9))
            expect(step.takeG + step.carrierG).toBeCloseTo(step.totalG, 9)
            share *= step.takeG / step.totalG
            expect(step.productShare).toBeCloseTo(share, 12)
            expect(step.totalG).toBeLessThanOrEqual(q.mostPremixG)
            beforeG = step.totalG
          }
          expect(plan.portionG * share).toBeCloseTo(doseG, 9)
          expect(plan.portionG).toBeLessThanOrEqual(beforeG * (1 + 1e-9))
        },
      ),
      { seed: 1731, numRuns: forLong(150, 3_000) },
    )
  })

  test('the carried error equals the first-order change of the dose, weighing by weighing', () => {
    const plan = planPremix({ ...q, doseG: 0.05, errorShare: 0.05, scales: [kitchen] })
    if (plan.outcome !== 'premix') throw new Error(plan.outcome)
    const u = Math.sqrt(2 * (1 / 12 + 0.25))
    const masses = [...plan.steps.flatMap((s) => [s.takeG, s.carrierG]), plan.portionG]
    const dose = (m: number[]) => {
      let share = 1
      for (let i = 0; i + 1 < m.length; i += 2) share *= (m[i] ?? 0) / ((m[i] ?? 0) + (m[i + 1] ?? 0))
      return share * (m[m.length - 1] ?? 0)
    }
    const variance = masses.reduce((sum, mass, i) => {
      const h = mass * 1e-6
      const up = masses.map((x, j) => (i === j ? x + h : x))
      const down = masses.map((x, j) => (i === j ? x - h : x))
      return sum + (((dose(up) - dose(down)) / (2 * h)) * u) ** 2
    }, 0)
    expect((2 * Math.sqrt(variance)) / dose(masses)).toBeCloseTo(plan.errorShare, 6)
  })

  const tiny = [
    [{ id: 'a', resolutionG: 1, repeatabilityG: 0.05, capacityG: 7 }],
    [
      { id: 'a', resolutionG: 1, repeatabilityG: 0.1, capacityG: 5 },
      { id: 'b', resolutionG: 0.5, repeatabilityG: 0.02, capacityG: 1.5 },
    ],
  ]
  test('never more steps than trying every mark of every scale needs, and none that it finds is missed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 2, noNaN: true }),
        fc.double({ min: 0.1, max: 0.9, noNaN: true }),
        fc.constantFrom(...tiny),
        fc.constantFrom(3, 7),
        (doseG, errorShare, scales, mostCarrierG) => {
          const asked = { doseG, errorShare, scales, mostCarrierG, coverageFactor: 1, mostPremixG: 12 }
          const fewest = fewestSteps(asked, 2)
          const plan = planPremix(asked)
          if (fewest !== null) expect(plan.outcome === 'not-possible' ? null : plan.steps.length).toBe(fewest)
          else if (plan.outcome !== 'not-possible') expect(plan.steps).toHaveLength(3)
        },
      ),
      { seed: 1732, numRuns: forLong(80, 800) },
    )
  })
})

test('masses that are not round are found where round ones do not do it', () => {
  const plan = planPremix({ ...q, doseG: 0.5, errorShare: 0.1, scales: [kitchen], mostCarrierG: 20 })
  expect(plan).toMatchObject({ outcome: 'premix' })
  expect(plan.outcome === 'premix' ? plan.steps.map(({ takeG }) => takeG) : []).toEqual([27])
})

test('scales of very many marks and a dose of micrograms are answered, not searched for ever', () => {
  const scales = [{ id: 'a', resolutionG: 0.0001, repeatabilityG: 0.0001, capacityG: 1000 }, kitchen]
  expect(planPremix({ ...q, doseG: 1e-6, errorShare: 1e-4, scales }).outcome).toBe('not-possible')
})

test('masses beyond any bakery are refused, with the field', () => {
  for (const [field, value] of [
    ['doseG', 1e-308],
    ['doseG', 1e308],
    ['mostPremixG', 1e308],
    ['mostCarrierG', 1e15],
  ] as const) {
    expect(() => planPremix({ ...q, doseG: 0.2, [field]: value })).toThrow(
      expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field }) }),
    )
  }
  expect(() => planPremix({ ...q, doseG: 0.2, scales: [{ ...fine, resolutionG: 1e-300 }] })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'scales[0].resolutionG' }) }),
  )
})

test('the smallest dose on the widest scales is still answered', () => {
  const scales = [{ id: 'a', resolutionG: 1e-6, repeatabilityG: 0, capacityG: 1e8 }]
  expect(
    planPremix({ doseG: 1e-9, errorShare: 0.01, coverageFactor: 2, scales, mostCarrierG: 1e8, mostPremixG: 1e8 })
      .outcome,
  ).toBe('premix')
})
