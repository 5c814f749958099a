import fc from 'fast-check'
import { expect, test } from 'vitest'
import { equalActiveMassG } from '@/lib/calc/dosing/equal-active-mass'
import type { ActiveStrength } from '@/lib/calc/dosing/types'
import { forLong } from '@/tests/support/long'

const share = (activeShare: number, strengthShare = 1, substance = 'vitamin C'): ActiveStrength => ({
  by: 'share',
  substance,
  activeShare,
  strengthShare,
})
const activity = (unitsPerG: number, method = 'A'): ActiveStrength => ({
  by: 'activity',
  activity: { method, unit: 'U' },
  unitsPerG,
  strengthShare: 1,
})
const reason = (text: string) =>
  expect.objectContaining({ code: 'not-possible', facts: expect.objectContaining({ reason: text }) })

test('there and back is the same mass', () => {
  const part = fc.double({ min: 0.01, max: 1, noNaN: true })
  fc.assert(
    fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), part, part, part, part, (massG, w1, s1, w2, s2) => {
      const there = equalActiveMassG({ massG, from: share(w1, s1), to: share(w2, s2) })
      expect(equalActiveMassG({ massG: there, from: share(w2, s2), to: share(w1, s1) })).toBeCloseTo(massG, 8)
    }),
    { seed: 1721, numRuns: forLong(200, 4_000) },
  )
})
test('within one assay activities are compared', () =>
  expect(equalActiveMassG({ massG: 3, from: activity(100), to: activity(50) })).toBeCloseTo(6, 12))
test('what cannot be compared is refused', () => {
  expect(() => equalActiveMassG({ massG: 1, from: share(0.5), to: share(0.5, 1, 'other') })).toThrow(
    reason('different-substance'),
  )
  expect(() => equalActiveMassG({ massG: 1, from: share(0.5), to: activity(5) })).toThrow(reason('dose-by-effect'))
  expect(() => equalActiveMassG({ massG: 1, from: activity(5), to: activity(5, 'B') })).toThrow(
    reason('dose-by-effect'),
  )
})
