import { expect, test } from 'vitest'
import { chiMixture } from '@/lib/calc/distributions/chi-mixture'
import { normalTail } from '@/lib/calc/distributions/normal-tail'
import { tTail } from '@/lib/calc/distributions/t-tail'

test('the mixture of a normal tail is the tail of t', () => {
  for (const df of [0.5, 2, 15, 3000]) {
    for (const c of [0.3, 4, 20]) {
      const atScale = (s: number) => ({
        lower: normalTail({ z: c * s, tail: 'lower' }),
        upper: normalTail({ z: c * s, tail: 'upper' }),
      })
      expect(chiMixture({ atScale, df }).upper / tTail({ t: c, df, tail: 'upper' })).toBeCloseTo(1, 10)
    }
  }
})

test('a certainty stays one', () => {
  for (const df of [0.5, 7, 1e6])
    expect(chiMixture({ atScale: () => ({ lower: 1, upper: 1 }), df }).lower).toBeCloseTo(1, 10)
})
