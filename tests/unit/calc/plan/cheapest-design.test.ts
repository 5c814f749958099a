import { expect, test } from 'vitest'
import { type DesignWanted, cheapestDesign } from '@/lib/calc/plan/cheapest-design'
import { gainPower } from '@/lib/calc/plan/gain-power'

const q = {
  seed: 'cheapest',
  runs: 4000,
  layout: 'complete-blocks',
  testArmCount: 2,
  trueDifference: 150,
  worthwhile: 80,
  confidence: 0.95,
  power: 0.8,
  blockSd: 60,
  batchSd: 60,
  loafSd: 50,
  blockCostMinor: 2000,
  batchCostMinor: 900,
  loafCostMinor: 60,
  leastBlocks: 1,
  mostBlocks: 8,
  mostBatchesPerBlock: 8,
  mostLoavesPerBatch: 6,
} as const

test('no design within the limits that reaches the power is cheaper', () => {
  const { designs } = cheapestDesign(q)
  expect(designs).toHaveLength(5)
  const costs: number[] = []
  for (let blocks = 1; blocks <= 8; blocks++) {
    for (const [arm, control] of [
      [1, 1],
      [2, 2],
      [2, 3],
    ] as const) {
      for (let loaves = 1; loaves <= 6; loaves++) {
        const batches = blocks * (2 * arm + control)
        const cost = blocks * 2000 + batches * (900 + 60 * loaves)
        if (cost >= designs[0]!.costMinor || batches - blocks - 2 < 1) continue
        const { arms } = gainPower({
          seed: 'all',
          runs: 4000,
          worthwhile: 80,
          goodDirection: 'larger',
          confidence: 0.95,
          trueDifferences: [150, 150],
          design: {
            layout: 'complete-blocks',
            blocks,
            armBatchesPerBlock: arm,
            controlBatchesPerBlock: control,
            loavesPerBatch: loaves,
          },
          spread: { blockSd: 60, batchSd: 60, loafSd: 50 },
        })
        costs.push(cost)
        expect(arms[0]!.power, JSON.stringify({ blocks, arm, control, loaves, cost })).toBeLessThan(
          0.8 + 4 * arms[0]!.powerSe,
        )
      }
    }
  }
  expect(costs.length).toBeGreaterThan(20)
})

test('designs come cheapest first, reach the power, and one loaf fewer does not', () => {
  const { designs } = cheapestDesign(q)
  designs.forEach((design, i) => {
    expect(design.power).toBeGreaterThanOrEqual(0.8)
    expect(design.costMinor).toBeGreaterThanOrEqual(designs[Math.max(0, i - 1)]!.costMinor)
    expect(design.batches).toBe(design.blocks * (2 * design.armBatchesPerBlock + design.controlBatchesPerBlock))
    expect(design.costMinor).toBe(design.blocks * 2000 + design.batches * 900 + design.loaves * 60)
  })
})

test('simulated verdicts confirm the first, within their own error, and the same seed says the same', () => {
  for (const change of [
    {},
    { layout: 'no-blocks' },
    { testArmCount: 4, mostBatchesPerBlock: 12 },
  ] satisfies Partial<DesignWanted>[]) {
    const got = cheapestDesign({ ...q, ...change, runs: 20_000 })
    expect(got.method).toBe('closed-form-search-confirmed-by-simulation')
    expect(Math.abs(got.simulated.power - got.designs[0]!.power)).toBeLessThan(4 * got.simulated.powerSe)
    expect(cheapestDesign({ ...q, ...change, runs: 20_000 })).toEqual(got)
  }
})

test('what costs more is bought less', () => {
  const fewADay = { ...q, mostBatchesPerBlock: 20, loafCostMinor: 0, mostLoavesPerBatch: 2 }
  const dearDays = cheapestDesign({ ...fewADay, blockCostMinor: 50_000, batchCostMinor: 0 }).designs[0]!
  const { designs } = cheapestDesign({ ...fewADay, blockCostMinor: 0, leastBlocks: 4 })
  expect(dearDays.blocks).toBe(1)
  expect(Math.min(...designs.map(({ blocks }) => blocks))).toBeGreaterThanOrEqual(4)
  expect(designs[0]!.batches).toBe(Math.min(...designs.map(({ batches }) => batches)))
  const dearLoaves = cheapestDesign({ ...q, loafCostMinor: 20_000 }).designs[0]!
  expect(dearLoaves.loaves).toBeLessThanOrEqual(cheapestDesign(q).designs[0]!.loaves)
})

test('many arms are offered extra doughs of the control', () => {
  const { designs } = cheapestDesign({
    ...q,
    testArmCount: 6,
    mostBatchesPerBlock: 20,
    mostBlocks: 20,
    batchCostMinor: 3000,
    blockCostMinor: 100,
  })
  expect(
    designs.some(({ armBatchesPerBlock, controlBatchesPerBlock }) => controlBatchesPerBlock > armBatchesPerBlock),
  ).toBe(true)
})

test('a power that the limits cannot give says how far the largest trial comes', () => {
  const few = { ...q, mostBlocks: 2, mostBatchesPerBlock: 3, mostLoavesPerBatch: 1 }
  expect(() => cheapestDesign(few)).toThrow('power-out-of-reach')
  expect(() => cheapestDesign(few)).toThrow(/"value":0\.[0-4]/)
  expect(() => cheapestDesign({ ...few, mostBlocks: 1 })).toThrow(/"value":0,/)
  expect(() => cheapestDesign({ ...q, trueDifference: 80 })).toThrow('half-fall-short')
})

test.each([
  ['testArmCount', { testArmCount: 0 }, 'out-of-range'],
  ['testArmCount', { testArmCount: 1.5 }, 'not-whole'],
  ['trueDifference', { trueDifference: -5 }, 'out-of-range'],
  ['worthwhile', { worthwhile: 0 }, 'out-of-range'],
  ['power', { power: 1 }, 'out-of-range'],
  ['confidence', { confidence: 95 }, 'out-of-range'],
  ['blockSd', { blockSd: NaN }, 'not-finite'],
  ['batchSd', { batchSd: 0, loafSd: 0 }, 'out-of-range'],
  ['loafCostMinor', { loafCostMinor: 0.5 }, 'not-whole'],
  ['mostBlocks', { mostBlocks: 10_000 }, 'out-of-range'],
  ['mostBlocks', { leastBlocks: 9 }, 'out-of-range'],
  ['leastBlocks', { leastBlocks: 0 }, 'out-of-range'],
  ['trueDifference', { trueDifference: 1e6 }, 'far-beyond-spread'],
  ['mostBatchesPerBlock', { mostBatchesPerBlock: 2 }, 'out-of-range'],
  ['mostLoavesPerBatch', { mostLoavesPerBatch: 0 }, 'out-of-range'],
  ['runs', { runs: 10 }, 'out-of-range'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  expect(() => cheapestDesign({ ...q, ...change })).toThrow(code)
  expect(() => cheapestDesign({ ...q, ...change })).toThrow(`"${field}"`)
})
