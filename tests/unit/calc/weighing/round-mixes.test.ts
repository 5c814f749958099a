import { expect, test } from 'vitest'
import { PURE } from '@/lib/calc/weighing/mix-step'
import { roundMixes } from '@/lib/calc/weighing/round-mixes'

const scales = [{ id: 'a', resolutionG: 1, capacityG: 1000, uncertaintyG: 0.5 }]
const aim = { doseG: 0.3, errorShare: 0.1, coverageFactor: 2, mostCarrierG: 50, mostPremixG: 500 }

test('all of them are round, enough for the dose, and within what can be mixed', () => {
  const mixes = roundMixes(aim, scales, PURE)
  expect(mixes.length).toBeGreaterThan(20)
  for (const { steps, totalG } of mixes) {
    const { takeG } = steps[0]!
    expect(['1', '2', '5']).toContain(takeG.toExponential()[0])
    expect(takeG).toBeGreaterThanOrEqual(0.3)
    expect(totalG).toBeLessThanOrEqual(500)
  }
})

test('nothing is left to take when the premix before is too little', () =>
  expect(roundMixes(aim, scales, { ...PURE, share: 0.01, totalG: 20 })).toEqual([]))
