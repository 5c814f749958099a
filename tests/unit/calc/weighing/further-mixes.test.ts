import { expect, test } from 'vitest'
import { furtherMixes } from '@/lib/calc/weighing/further-mixes'
import { PURE } from '@/lib/calc/weighing/mix-step'
import { readyScales } from '@/lib/calc/weighing/ready-scales'

const aim = { doseG: 0.05, errorShare: 0.5, coverageFactor: 2, mostCarrierG: 50, mostPremixG: 20 }

test('on a scale of few marks every mix is there that could lead on', () => {
  const scales = readyScales([{ id: 'a', resolutionG: 1, repeatabilityG: 0.01, capacityG: 5 }])
  const mixes = furtherMixes(aim, scales, [PURE])
  const pairs = mixes.map(({ steps }) => `${steps[0]!.takeG}+${steps[0]!.carrierG}`).sort()
  const expected: string[] = []
  for (let take = 1; take <= 5; take++) {
    for (let carrier = 1; carrier <= 5; carrier++) {
      const u2 = scales[0]!.uncertaintyG ** 2
      if ((carrier / (take + carrier)) ** 2 * (u2 / take ** 2 + u2 / carrier ** 2) < 0.0625)
        expected.push(`${take}+${carrier}`)
    }
  }
  expect(pairs).toEqual(expected.sort())
})

test('on scales of thousands of marks the search stays bounded', () => {
  const scales = readyScales([
    { id: 'a', resolutionG: 0.001, repeatabilityG: 0.001, capacityG: 500 },
    { id: 'b', resolutionG: 1, repeatabilityG: 0.5, capacityG: 10_000 },
  ])
  const first = furtherMixes({ ...aim, mostPremixG: 5000 }, scales, [PURE])
  expect(first.length).toBeLessThanOrEqual(400)
  expect(furtherMixes({ ...aim, mostPremixG: 5000 }, scales, first).length).toBeLessThanOrEqual(400)
})
