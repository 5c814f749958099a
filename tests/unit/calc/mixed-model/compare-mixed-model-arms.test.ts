import { expect, test } from 'vitest'
import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { compareMixedModelArms } from '@/lib/calc/mixed-model/compare-mixed-model-arms'
import { type MixedFit, fitMixedModel } from '@/lib/calc/mixed-model/fit-mixed-model'
import { mixedTrial } from '@/tests/support/mixed-trials'

const asked = { dfMethod: 'kenward-roger', confidence: 0.95, alternative: 'two-sided' } as const
const balanced = mixedTrial('compare', { arms: 4, blocks: 4, pieces: 3, batchSd: 2 })
const balancedFit = fitMixedModel({
  rows: balanced.rows,
  model: { arms: balanced.arms, fixed: ['block'], random: ['batch'] },
})

test('in balanced data it is Dunnett’s comparison of batch means, exact', () => {
  const readings = balanced.rows.map(({ arm, factors, y }, i) => ({
    arm,
    block: factors.block!,
    batch: factors.batch!,
    loaf: String(i),
    value: y,
  }))
  const classical = analyseBatches({
    readings,
    arms: balanced.arms,
    confidence: 0.95,
    alternative: 'two-sided',
    scale: 'plain',
  }).comparisons
  for (const dfMethod of ['satterthwaite', 'kenward-roger'] as const) {
    const got = compareMixedModelArms({ fit: balancedFit, ...asked, dfMethod })
    expect(got.method).toBe('dunnett-product')
    expect(got.dfMethod).toBe(dfMethod)
    expect(got.df).toBeCloseTo(classical.df, 6)
    expect(got.criticalValue).toBeCloseTo(classical.criticalValue, 7)
    got.comparisons.forEach((own, i) => {
      expect(own.pAdjusted).toBeCloseTo(classical.comparisons[i]!.pAdjusted, 8)
      expect(own.low).toBeCloseTo(classical.comparisons[i]!.low!, 6)
      expect(own.high).toBeCloseTo(classical.comparisons[i]!.high!, 6)
    })
  }
})

test('in unbalanced data the smallest degrees of freedom and the model’s own correlation are used', () => {
  const { rows, arms } = mixedTrial('uneven', { arms: 5, blocks: 5, pieces: 3, batchSd: 2, unbalanced: true })
  const some = rows
    .filter(({ arm, factors }) => arm !== arms[1] || factors.block !== '0')
    .filter(({ arm, factors }) => arm !== arms[2] || factors.block !== '1')
  const fit = fitMixedModel({ rows: some, model: { arms, fixed: ['block'], random: ['batch'] } })
  const got = compareMixedModelArms({ fit, ...asked })
  expect(got.method).toBe('dunnett-lattice')
  expect(got.df).toBe(Math.min(...fit.differences.map(({ kenwardRoger }) => kenwardRoger!.df)))
  got.comparisons.forEach((own, i) => {
    const alone = fit.differences[i]!.kenwardRoger!
    expect(own.se).toBe(alone.se)
    expect(own.pAdjusted).toBeGreaterThan(alone.p)
    expect(own.low!).toBeLessThan(own.estimate)
    expect(own.high!).toBeGreaterThan(own.estimate)
  })
})

test('one-sided comparisons leave the other side open', () => {
  const { comparisons } = compareMixedModelArms({ fit: balancedFit, ...asked, alternative: 'greater' })
  expect(comparisons.every(({ low, high }) => low !== null && high === null)).toBe(true)
})

test('one arm, a variance at zero and degrees of freedom that are not there are refused', () => {
  const reason = (fit: MixedFit) => () => compareMixedModelArms({ fit, ...asked })
  const alone = balanced.rows.filter(({ arm }) => arm === balanced.arms[0])
  expect(reason(fitMixedModel({ rows: alone, model: { arms: balanced.arms.slice(0, 1), random: ['batch'] } }))).toThrow(
    'one-arm',
  )
  const flat = balanced.rows.map((row, i) => ({ ...row, y: [1, 5, 3][i % 3]! }))
  const atZero = fitMixedModel({ rows: flat, model: { arms: balanced.arms, random: ['batch'] } })
  expect(atZero.warnings).toEqual(['variance-at-zero-use-batch-means'])
  expect(reason(atZero)).toThrow('variance-at-zero')
  const without = {
    ...balancedFit,
    differences: balancedFit.differences.map((own) => ({ ...own, kenwardRoger: null })),
  }
  expect(reason(without)).toThrow('kenward-roger-undefined')
  expect(() => compareMixedModelArms({ fit: balancedFit, ...asked, confidence: 1.2 })).toThrow('confidence')
})
