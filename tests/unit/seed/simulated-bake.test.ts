import { beforeAll, describe, expect, test } from 'vitest'
import { analyseTrial, type TrialAnalysis } from '@/lib/kitchen/results/analyse-trial'
import type { MeasuredBatch } from '@/lib/kitchen/results/trial-facts'
import { oatTrial, wholemealTrial, type BakedTrial } from '@/seed/baked-trials'
import { trueDifferencePct } from '@/seed/simulated-bake'
import { forLong } from '@/tests/support/long'
import { declaredOf, measuredDoughs, mostInNinetyNine } from '@/tests/support/simulated-trial'

const seeds = Array.from({ length: forLong(200, 2000) }, (_, i) => `bake ${i}`)
/** Of the oat trial. */
const noEffect = 2

const { mixingDays, batchesPerArm } = oatTrial
const designs = forLong(
  [{ mixingDays, batchesPerArm }],
  [2, 3, 4].flatMap((days) => [1, 2].map((batches) => ({ mixingDays: days, batchesPerArm: batches }))),
)

const analysed = (trial: BakedTrial, doughs: readonly MeasuredBatch[]): TrialAnalysis =>
  analyseTrial(declaredOf(trial), doughs)
const isCalled = (analysis: TrialAnalysis, arm: number) =>
  ['better', 'worse'].includes(analysis.comparison!.arms[arm]!.verdict!.verdict)

function holdsTruth(trial: BakedTrial, analysis: TrialAnalysis): boolean {
  return analysis.comparison!.arms.slice(1).every(({ arm, effect }) => {
    const truth = trueDifferencePct(trial.truth, arm)
    return effect!.lowPct! <= truth && truth <= effect!.highPct!
  })
}

/** Each loaf as if it had been mixed by itself, on a mixing day of its own. */
const loafAsUnit = (doughs: readonly MeasuredBatch[]) =>
  doughs.flatMap((dough) =>
    dough.pieces.map((piece) => ({
      ...dough,
      id: `${dough.id} ${piece.piece}`,
      day: 100 * dough.day + piece.piece,
      pieces: [piece],
    })),
  )

describe.each(designs)('the bake of the oat loaf over many seeds, $mixingDays days of $batchesPerArm', (design) => {
  const trial: BakedTrial = { ...oatTrial, ...design }
  const wrongShare = 1 - trial.confidencePct / 100
  const mostWrong = mostInNinetyNine(seeds.length, wrongShare)
  let analyses: TrialAnalysis[]
  beforeAll(
    () => {
      analyses = seeds.map((seed) => analysed(trial, measuredDoughs(trial, seed)))
    },
    forLong(60_000, 600_000),
  )

  test('calls the arm without effect better or worse no more often than declared', () => {
    expect(trial.truth.gainShares[noEffect]).toBe(0)
    expect(analyses.filter((analysis) => isCalled(analysis, noEffect)).length).toBeLessThanOrEqual(mostWrong)
  })

  test('covers all true differences together at least as often as declared', () => {
    const missed = analyses.filter((analysis) => !holdsTruth(trial, analysis)).length
    expect(missed).toBeLessThanOrEqual(mostWrong)
    // Nor are the intervals so wide that they could not miss.
    expect(missed).toBeGreaterThan(0)
  })
})

describe('the check can fail', { timeout: forLong(60_000, 600_000) }, () => {
  const mostWrong = mostInNinetyNine(seeds.length, 1 - oatTrial.confidencePct / 100)

  test('when loaves are taken for doughs of days of their own', () => {
    const analyses = seeds.map((seed) => analysed(oatTrial, loafAsUnit(measuredDoughs(oatTrial, seed))))
    expect(analyses.filter((analysis) => !holdsTruth(oatTrial, analysis)).length).toBeGreaterThan(mostWrong)
  })

  test('when the arm that is said to have no effect has one', () => {
    const [control, gain] = oatTrial.truth.gainShares
    const other = { ...oatTrial, truth: { ...oatTrial.truth, gainShares: [control!, gain!, 0.06] } }
    const analyses = seeds.map((seed) => analysed(other, measuredDoughs(other, seed)))
    expect(analyses.filter((analysis) => isCalled(analysis, noEffect)).length).toBeGreaterThan(mostWrong)
    expect(analyses.filter((analysis) => !holdsTruth(oatTrial, analysis)).length).toBeGreaterThan(mostWrong)
  })
})

describe('one bake', () => {
  const doughs = measuredDoughs(oatTrial, oatTrial.seed)

  test('is the same from the same seed, and another from another', () => {
    expect(measuredDoughs(oatTrial, oatTrial.seed)).toEqual(doughs)
    expect(measuredDoughs(oatTrial, 'another')).not.toEqual(doughs)
  })

  test('is believable: loaves lose 10 to 16 %, and every reading lies in the range of its measure', () => {
    for (const { pieces, conditions } of doughs) {
      expect(conditions['dough-temp']).toBeGreaterThan(23)
      expect(conditions['dough-temp']).toBeLessThan(29)
      for (const { loafMassG, value } of pieces) {
        expect(loafMassG! / 760).toBeGreaterThan(0.84)
        expect(loafMassG! / 760).toBeLessThan(0.9)
        expect(value).toBeGreaterThan(2)
        expect(value).toBeLessThan(5)
      }
    }
  })

  test.each([
    { trial: wholemealTrial, name: 'wholemeal tin' },
    { trial: oatTrial, name: 'oat loaf' },
  ])('finds the gain of the first arm of the $name', ({ trial }) => {
    const lost = trial.mishaps.filter(({ is }) => is === 'lost')
    const baked = measuredDoughs(trial, trial.seed).map((dough) =>
      lost.some(({ day, arm }) => day === dough.day && arm === dough.arm)
        ? { ...dough, state: 'lost' as const, pieces: [] }
        : dough,
    )
    const { arms } = analysed(trial, baked).comparison!
    expect(arms[1]!.verdict!.verdict).toBe('better')
    expect(['better', 'worse']).not.toContain(arms[2]!.verdict!.verdict)
  })
})

describe('the most wrong calls that chance explains', () => {
  test('is the 99 % quantile, worked out by adding up the binomial terms', () => {
    let term = 0.95 ** 200
    let sum = term
    let count = 0
    while (sum < 0.99) {
      term *= ((200 - count) / (count + 1)) * (0.05 / 0.95)
      sum += term
      count++
    }
    expect(mostInNinetyNine(200, 0.05)).toBe(count)
  })
})
