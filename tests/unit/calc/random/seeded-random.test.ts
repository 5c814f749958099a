import { expect, test } from 'vitest'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'

test('the same seed gives the same numbers, as text or as integer', () => {
  const take = (seed: string | number) => {
    const random = seededRandom(seed)
    return Array.from({ length: 20 }, random)
  }
  expect(take('trial-7')).toEqual(take('trial-7'))
  expect(take(42)).toEqual(take('42'))
  expect(take('trial-7')).not.toEqual(take('trial-8'))
})

test('numbers lie in [0, 1), fill ten bins evenly and do not hang together', () => {
  const random = seededRandom('even')
  const n = forLong(100_000, 2_000_000)
  const bins = new Array<number>(10).fill(0)
  let lagged = 0
  let outside = 0
  let before = random() - 0.5
  for (let i = 0; i < n; i++) {
    const u = random()
    if (u < 0 || u >= 1) outside += 1
    bins[Math.floor(u * 10)]! += 1
    lagged += before * (u - 0.5)
    before = u - 0.5
  }
  expect(outside).toBe(0)
  const chiSquared = bins.reduce((sum, count) => sum + (count - n / 10) ** 2 / (n / 10), 0)
  expect(chiSquared).toBeLessThan(27.88) // upper 0.001 point, 9 df
  expect(Math.abs((lagged / n) * 12)).toBeLessThan(3.3 / Math.sqrt(n))
})
