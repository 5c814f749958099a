import fc from 'fast-check'
import { expect, test } from 'vitest'
import { doseChain } from '@/lib/calc/dosing/dose-chain'
import { forLong } from '@/tests/support/long'

const bench = { id: 'bench', resolutionG: 1, repeatabilityG: 0.5, capacityG: 15_000 }
const fine = { id: 'fine', resolutionG: 0.01, repeatabilityG: 0.01, capacityG: 200 }
const q = {
  doseMgPerKgFlour: 60,
  flourMassG: 10_000,
  activeShare: 0.5,
  strengthShare: 0.8,
  strengthErrorShare: 0.03,
  errorShare: 0.04,
  coverageFactor: 2,
  scales: [bench, fine],
  mostCarrierG: 500,
  mostPremixG: 5000,
}

test('60 ppm on 10 kg are 600 mg, and 1500 mg of a product of which 40 % works', () => {
  const chain = doseChain(q)
  expect(chain.activeMg).toBeCloseTo(600, 9)
  expect(chain.productMg).toBeCloseTo(1500, 9)
  expect(chain.outcome).toBe('direct')
  expect(chain.weighings).toHaveLength(1)
  expect(chain.activeErrorShare).toBeCloseTo(Math.hypot(chain.weighingErrorShare!, 0.03), 12)
})

test('what is weighed brings the dose, and the error at the last weighing is that of the whole', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 300, noNaN: true }),
      fc.double({ min: 500, max: 20_000, noNaN: true }),
      fc.constantFrom([bench], [fine], [bench, fine]),
      (doseMgPerKgFlour, flourMassG, scales) => {
        const chain = doseChain({ ...q, doseMgPerKgFlour, flourMassG, scales })
        if (chain.outcome === 'not-possible') return
        let share = 1
        for (let i = 0; i + 1 < chain.weighings.length; i += 2) {
          const [take, carrier] = [chain.weighings[i]!, chain.weighings[i + 1]!]
          share *= take.massG / (take.massG + carrier.massG)
        }
        const portion = chain.weighings.at(-1)!
        expect((portion.massG * share * 1000) / chain.productMg).toBeCloseTo(1, 9)
        expect(portion.soFarErrorShare).toBeCloseTo(chain.weighingErrorShare!, 12)
        const errors = chain.weighings.map((one) => one.soFarErrorShare)
        expect(errors).toEqual([...errors].sort((a, b) => a - b))
      },
    ),
    { numRuns: forLong(60, 600) },
  ))

test('what these scales cannot do is said, with how near they come', () =>
  expect(doseChain({ ...q, doseMgPerKgFlour: 1, flourMassG: 500, errorShare: 0.001, scales: [bench] })).toMatchObject({
    outcome: 'not-possible',
    weighings: [],
    activeErrorShare: null,
  }))

test('no dose, no flour and a share that is a percentage are refused', () => {
  for (const [field, value] of [
    ['doseMgPerKgFlour', 0],
    ['flourMassG', 0],
    ['activeShare', 50],
    ['strengthErrorShare', 1],
    ['errorShare', Number.NaN],
  ] as const) {
    expect(() => doseChain({ ...q, [field]: value })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field }) }),
    )
  }
})

test('more product than flour is refused, and more than a tenth of it said', () => {
  const weak = { ...q, activeShare: 0.01, strengthShare: 1, mostCarrierG: 5000 }
  expect(doseChain({ ...weak, doseMgPerKgFlour: 900 }).warnings).toEqual([])
  expect(doseChain({ ...weak, doseMgPerKgFlour: 1100 }).warnings).toEqual(['more-than-a-tenth-of-flour'])
  expect(() => doseChain({ ...weak, doseMgPerKgFlour: 11_000 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'more-than-flour' }) }),
  )
  expect(() => doseChain({ ...q, doseMgPerKgFlour: 1_000_001 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
