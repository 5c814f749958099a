import { describe, expect, test } from 'vitest'
import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { gainVerdict } from '@/lib/calc/analysis/gain-verdict'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'
import { leastWrong, mostWrong, rateCheck } from '@/tests/support/rate-check'

const TRIALS = forLong(150, 1000)
const CONFIDENCE = 0.95
const LEVEL = 0.05
const ARMS = ['control', 'b', 'c']
const WORTHWHILE = 90
/** One arm without any effect, one whose effect is just worth having. */
const TRUE: Record<string, number> = { control: 0, b: 0, c: WORTHWHILE }

type Design = { blocks: number; batches: number; batchSd: number; spread: string }

const every: Design[] = [2, 3, 4, 5, 6].flatMap((blocks) =>
  [1, 2, 3].flatMap((batches) =>
    [0, 50].map((batchSd) => ({
      blocks,
      batches,
      batchSd,
      spread: batchSd > 0 ? `batch SD ${batchSd}` : 'batches alike',
    })),
  ),
)
const some = every.filter(
  ({ blocks, batches, batchSd }) => (blocks + batches + batchSd / 50) % 5 === 0 || (blocks === 2 && batches === 1),
)

/** A trial simulated loaf by loaf, three a batch, and analysed as the app does. */
function trial(seed: string, q: Design) {
  const random = seededRandom(seed)
  const readings = Array.from({ length: q.blocks }).flatMap((_, block) => {
    const day = 80 * normalDeviate(random)
    return ARMS.flatMap((arm) =>
      Array.from({ length: q.batches }).flatMap((__, copy) => {
        const dough = 2500 + day + TRUE[arm]! + q.batchSd * normalDeviate(random)
        const batch = `${block} ${arm} ${copy}`
        return ['1', '2', '3'].map((loaf) => ({
          arm,
          block: String(block),
          batch,
          loaf,
          value: dough + 45 * normalDeviate(random),
        }))
      }),
    )
  })
  return analyseBatches({ readings, arms: ARMS, confidence: CONFIDENCE, alternative: 'two-sided', scale: 'plain' })
    .comparisons.comparisons
}

type Compared = ReturnType<typeof trial>[number]
const verdictOf = ({ estimate, low, high }: Compared, worthwhile: number) =>
  gainVerdict({ estimate, low: low!, high: high!, worthwhile, goodDirection: 'larger' })!.verdict

describe.each(forLong(some, every))('$blocks blocks, $batches of each arm in a block, $spread', (q) => {
  let simulated: Compared[][] | undefined
  const counted = (isWrong: (arms: Compared[]) => boolean) => () => {
    simulated ??= Array.from({ length: TRIALS }, (_, seed) =>
      trial(`honest ${q.blocks} ${q.batches} ${q.batchSd} ${seed}`, q),
    )
    return { trials: TRIALS, wrong: simulated.filter(isWrong).length }
  }

  rateCheck({
    what: 'an arm without effect is called better or worse, however small a gain were worth having',
    stated: LEVEL,
    count: counted(([b]) => ['better', 'worse'].includes(verdictOf(b!, 1e-6))),
  })

  rateCheck({
    what: 'an arm just worth having is called worse, or no worthwhile difference',
    stated: LEVEL,
    count: counted(([, c]) => ['worse', 'no-worthwhile-difference'].includes(verdictOf(c!, WORTHWHILE))),
  })

  rateCheck({
    what: 'not all intervals of a trial hold the truth',
    stated: LEVEL,
    isExact: true,
    count: counted((arms) => arms.some(({ arm, low, high }) => low! > TRUE[arm]! || high! < TRUE[arm]!)),
  })
})

test('the bounds are those of the binomial: of 100 at 5 %, 13 may go wrong; of 2000, no fewer than 71', () => {
  // Sums of exact fractions: P(X ≥ 13) = 0.0015, P(X ≥ 14) = 0.0005; P(X ≤ 70) = 0.0007, P(X ≤ 71) = 0.0010.
  expect(mostWrong(100, 0.05)).toBe(13)
  expect(leastWrong(2000, 0.05)).toBe(71)
  expect(leastWrong(150, 0.05)).toBe(1)
})
