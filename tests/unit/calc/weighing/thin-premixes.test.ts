import { expect, test } from 'vitest'
import { PURE } from '@/lib/calc/weighing/mix-step'
import { thinPremixes } from '@/lib/calc/weighing/thin-premixes'

const made = Array.from({ length: 1000 }, (_, i) => ({
  ...PURE,
  share: (i + 1) / 1000,
  variance: ((i * 7919) % 1000) / 1e6,
  totalG: (i * 104_729) % 1000,
}))

test('no more are kept than asked for, the weakest and strongest range, the least error and the largest among them', () => {
  const kept = thinPremixes(made, 40)
  expect(kept.length).toBeLessThanOrEqual(40)
  expect(Math.min(...kept.map(({ variance }) => variance))).toBe(0)
  expect(Math.max(...kept.map(({ totalG }) => totalG))).toBe(999)
  expect(kept.some(({ share }) => share <= 0.05) && kept.some(({ share }) => share > 0.95)).toBe(true)
})

test('few are all kept', () => expect(thinPremixes(made.slice(0, 5), 40)).toEqual(made.slice(0, 5)))
