import { expect, test } from 'vitest'
import { waterPhaseSalt } from '@/lib/calc/acidity/water-phase-salt'

test('it is of salt and water together, and nothing dry counts', () => {
  expect(waterPhaseSalt({ saltMassG: 25, waterMassG: 975 }).waterPhaseSaltPct).toBe(2.5)
})

test('it never says that bread keeps, and says when the salt cannot dissolve', () => {
  expect(waterPhaseSalt({ saltMassG: 20, waterMassG: 700 }).warnings).toEqual(['no-proof-of-keeping'])
  expect(waterPhaseSalt({ saltMassG: 300, waterMassG: 700 }).warnings).toContain('above-saturation')
})

test('no water is refused', () => {
  expect(() => waterPhaseSalt({ saltMassG: 20, waterMassG: 0 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
