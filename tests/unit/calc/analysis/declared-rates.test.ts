import { describe, expect, test } from 'vitest'
import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { gainVerdict } from '@/lib/calc/analysis/gain-verdict'
import { regularisedBeta } from '@/lib/calc/distributions/regularised-beta'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'

const TRIALS = forLong(200, 4000)
const CONFIDENCE = 0.95
const ARMS = ['control', 'b', 'c']
const TRUE = { control: 0, b: 0, c: 90 } as Record<string, number>

/** Fewest trials out of n that happen with chance below 1 % when each happens with chance `rate`. */
function tooMany(n: number, rate: number): number {
  for (let count = 1; count <= n; count++) {
    // P(X ≥ count) for a binomial
    if (regularisedBeta({ x: rate, y: 1 - rate, a: count, b: n - count + 1 }).lower < 0.01) return count
  }
  return n + 1
}

/** A trial of control, an arm without effect and one with an effect of 90, three loaves a batch. */
function trial(seed: string, q: { blocks: number; batchSd: number }) {
  const random = seededRandom(seed)
  const readings = Array.from({ length: q.blocks }).flatMap((_, block) => {
    const day = 80 * normalDeviate(random)
    return ARMS.flatMap((arm) => {
      const dough = 2500 + day + TRUE[arm]! + q.batchSd * normalDeviate(random)
      return ['1', '2', '3'].map((loaf) => ({ arm, block: String(block), batch: `${block}${arm}`, loaf, value: dough + 45 * normalDeviate(random) }))
    })
  })
  return analyseBatches({ readings, arms: ARMS, confidence: CONFIDENCE, alternative: 'two-sided', scale: 'plain' }).comparisons.comparisons
}

describe.each([
  { blocks: 2, batchSd: 0 },
  { blocks: 2, batchSd: 50 },
  { blocks: 3, batchSd: 0 },
  { blocks: 4, batchSd: 50 },
  { blocks: 6, batchSd: 0 },
  { blocks: 6, batchSd: 50 },
])('$blocks blocks, batch SD $batchSd', (q) => {
  const trials = Array.from({ length: TRIALS }, (_, seed) => trial(`rates ${q.blocks} ${q.batchSd} ${seed}`, q))

  test('an arm without effect is called better or worse no more often than declared', () => {
    const wrong = trials.filter(([b]) => {
      const got = gainVerdict({ estimate: b!.estimate, low: b!.low!, high: b!.high!, worthwhile: 1e-6, goodDirection: 'larger' })
      return got!.verdict === 'better' || got!.verdict === 'worse'
    })
    expect(wrong.length).toBeLessThan(tooMany(TRIALS, 1 - CONFIDENCE))
  })

  test('all intervals of a trial hold the truth together as often as stated', () => {
    const missed = trials.filter((arms) => arms.some(({ arm, low, high }) => low! > TRUE[arm]! || high! < TRUE[arm]!))
    expect(missed.length).toBeLessThan(tooMany(TRIALS, 1 - CONFIDENCE))
    // and are not wide for nothing: a method that never missed would be too cautious
    expect(missed.length).toBeGreaterThan(0)
  })
})
