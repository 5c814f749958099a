import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { CHANCE_SHARE } from '@/lib/calc/panel/constants'
import { correctShare } from '@/lib/calc/panel/correct-share'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import type { KnownAnswerTest } from '@/lib/calc/panel/types'
import { forLong } from '../../../support/long'

const tests = ['triangle', 'duo-trio', 'paired', 'three-afc'] as const

/** One taster's answer by Thurstone's model; two portions of the one sample, one or two of the other, d′ apart. */
const isRight: Record<KnownAnswerTest, (one: number, alike: number, other: number) => boolean> = {
  triangle: (one, alike, other) =>
    Math.abs(one - alike) < Math.abs(one - other) && Math.abs(one - alike) < Math.abs(alike - other),
  'duo-trio': (one, alike, other) => Math.abs(one - alike) < Math.abs(one - other),
  paired: (one, _, other) => other > one,
  'three-afc': (one, alike, other) => other > one && other > alike,
}

describe.each(tests)('%s', (kind) => {
  const share = (dPrime: number) => correctShare({ test: kind, dPrime }).correctShare

  test('without a difference it is chance, and it tends to 1', () => {
    expect(share(0)).toBeCloseTo(CHANCE_SHARE[kind], 14)
    expect(share(30)).toBeCloseTo(1, 12)
  })

  test('it rises with the difference, and the slope is its slope', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 8, noNaN: true }), (dPrime) => {
        const step = 1e-4
        const rise = (share(dPrime + step) - share(dPrime - step)) / (2 * step)
        const { slope } = correctShare({ test: kind, dPrime })
        expect(slope).toBeGreaterThan(0)
        expect(Math.abs(slope - rise)).toBeLessThan(1e-8)
      }),
    )
  })

  test('tasters drawn by the model are right as often', () => {
    const random = seededRandom(`psychometric ${kind}`)
    const draws = forLong(20_000, 400_000)
    let right = 0
    for (let i = 0; i < draws; i++) {
      if (isRight[kind](normalDeviate(random), normalDeviate(random), 1.5 + normalDeviate(random))) right++
    }
    const expected = share(1.5)
    // four standard deviations: a chance of 6 in 100 000, and the seed is fixed
    expect(Math.abs(right / draws - expected)).toBeLessThan(4 * Math.sqrt((expected * (1 - expected)) / draws))
  })

  test.each([-0.1, 31, NaN, Infinity])('a d′ of %s is refused', (dPrime) => {
    expect(() => share(dPrime)).toThrow('dPrime')
  })
})
