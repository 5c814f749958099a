import { expect, test } from 'vitest'
import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { gainVerdict } from '@/lib/calc/analysis/gain-verdict'
import { type TrialDesign, gainPower } from '@/lib/calc/plan/gain-power'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'

const q = {
  seed: 'power',
  runs: forLong(4000, 80_000),
  design: { layout: 'complete-blocks', blocks: 4, armBatchesPerBlock: 1, controlBatchesPerBlock: 2, loavesPerBatch: 3 },
  spread: { blockSd: 60, batchSd: 40, loafSd: 50 },
  trueDifferences: [150, 0],
  worthwhile: 80,
  goodDirection: 'larger',
  confidence: 0.95,
} as const

test('it agrees with drawing and analysing every loaf', () => {
  const runs = forLong(300, 6000)
  const random = seededRandom('loaves')
  const arms = ['control', 'b', 'c']
  const better = [0, 0]
  for (let run = 0; run < runs; run++) {
    const readings = ['1', '2', '3', '4'].flatMap((block) => {
      const day = 60 * normalDeviate(random)
      return ['control', 'control', 'b', 'c'].flatMap((arm, copy) => {
        const dough = 2500 + day + (arm === 'b' ? 150 : 0) + 40 * normalDeviate(random)
        return ['1', '2', '3'].map((loaf) => ({
          arm,
          block,
          batch: `${block}/${copy}`,
          loaf,
          value: dough + 50 * normalDeviate(random),
        }))
      })
    })
    const { comparisons } = analyseBatches({
      readings,
      arms,
      confidence: 0.95,
      alternative: 'two-sided',
      scale: 'plain',
    }).comparisons
    comparisons.forEach(({ estimate, low, high }, i) => {
      const got = gainVerdict({ estimate, low: low!, high: high!, worthwhile: 80, goodDirection: 'larger' })
      if (got!.verdict === 'better') better[i]! += 1
    })
  }
  gainPower(q).arms.forEach(({ power }, i) => {
    const se = Math.sqrt(Math.max(power * (1 - power), 0.01) / runs)
    expect(Math.abs(better[i]! / runs - power)).toBeLessThan(3.5 * se)
  })
})

test('shares add up to one, and the same seed gives the same shares', () => {
  const got = gainPower(q)
  expect(gainPower(q)).toEqual(got)
  for (const { share } of got.arms) {
    expect(share.better + share.worse + share['no-worthwhile-difference'] + share.undecided).toBeCloseTo(1, 12)
    expect(share.clearly).toBeLessThanOrEqual(share.better)
  }
})

test('more blocks, more loaves and less batch spread never make it worse', () => {
  const power = (change: Partial<TrialDesign>, batchSd = 40) =>
    gainPower({ ...q, design: { ...q.design, ...change }, spread: { ...q.spread, batchSd } }).arms[0]!.power
  const slack = 0.03 // about three standard errors of a difference
  expect(power({ blocks: 6 })).toBeGreaterThan(power({}) - slack)
  expect(power({ loavesPerBatch: 12 })).toBeGreaterThan(power({}) - slack)
  expect(power({}, 20)).toBeGreaterThan(power({}) - slack)
})

test('three batches each without blocks see a 5 % difference about one time in three when batches vary by 3 %', () => {
  const { power } = gainPower({
    ...q,
    runs: forLong(20_000, 400_000),
    design: { layout: 'no-blocks', blocks: 3, armBatchesPerBlock: 1, controlBatchesPerBlock: 1, loavesPerBatch: 1 },
    spread: { blockSd: 0, batchSd: 3, loafSd: 0 },
    trueDifferences: [5],
    worthwhile: 1,
  }).arms[0]!
  expect(power).toBeGreaterThan(0.28)
  expect(power).toBeLessThan(0.39)
})

test('block spread matters only without blocks', () => {
  const se = (layout: 'complete-blocks' | 'no-blocks', blockSd: number) =>
    gainPower({ ...q, runs: 100, design: { ...q.design, layout }, spread: { ...q.spread, blockSd } }).differenceSe
  expect(se('complete-blocks', 0)).toBe(se('complete-blocks', 500))
  expect(se('no-blocks', 60)).toBeGreaterThan(se('no-blocks', 0))
})

test('smaller-is-better mirrors larger-is-better', () => {
  const runs = forLong(20_000, 400_000)
  const [larger, smaller] = [
    gainPower({ ...q, runs }),
    gainPower({ ...q, runs, trueDifferences: [-150, 0], goodDirection: 'smaller' }),
  ]
  expect(Math.abs(larger.arms[0]!.power - smaller.arms[0]!.power)).toBeLessThan(0.02)
})

test('a design that leaves no degrees of freedom, and no spread at all, are refused', () => {
  const design = { ...q.design, blocks: 1, controlBatchesPerBlock: 1 }
  expect(() => gainPower({ ...q, design })).toThrow('no-residual-df')
  expect(() => gainPower({ ...q, spread: { blockSd: 10, batchSd: 0, loafSd: 0 } })).toThrow('out-of-range')
  expect(() => gainPower({ ...q, runs: 100.5 })).toThrow('not-whole')
})
