import { expect, test } from 'vitest'
import { crossProducts } from '@/lib/calc/mixed-model/cross-products'
import { mixedTrial, productsOf } from '@/tests/support/mixed-trials'

const u = [
  [1, 2],
  [1, 4],
  [1, 9],
  [1, 1],
]

test('sums by level, and what is left within the levels', () => {
  const cross = crossProducts({ u, random: [{ name: 'batch', levels: ['a', 'a', 'b', 'b'] }] })
  expect(cross).toMatchObject({
    n: 4,
    p: 1,
    names: ['batch'],
    levelCounts: [2],
    largestLevels: [2],
    within: [
      [0, 0],
      [0, 34],
    ],
  })
  expect(cross.components).toEqual([
    {
      fine: [
        { count: 2, sum: [2, 6], links: [] },
        { count: 2, sum: [2, 10], links: [] },
      ],
      coarse: [],
      crossing: [],
    },
  ])
})

test('the factor of more levels leads, and nested ones fall into a component for each outer level', () => {
  const { rows, arms } = mixedTrial('nested', { arms: 3, blocks: 4, pieces: 2, batchSd: 1 })
  const { cross } = productsOf({ rows, model: { arms, random: ['block', 'batch'] } })
  expect(cross.names).toEqual(['batch', 'block'])
  expect(cross.components.map(({ fine, coarse }) => [fine.length, coarse.length])).toEqual([
    [3, 1],
    [3, 1],
    [3, 1],
    [3, 1],
  ])
})

test('crossed ones hang together, through however many rows', () => {
  const levels = { oven: ['1', '1', '2', '3'], day: ['x', 'y', 'y', 'z'] }
  const { components } = crossProducts({
    u,
    random: Object.entries(levels).map(([name, own]) => ({ name, levels: own })),
  })
  expect(components.map(({ fine, coarse }) => [fine.length, coarse.length])).toEqual([
    [2, 2],
    [1, 1],
  ])
  expect(components[0]!.fine[0]!.links).toEqual([
    { coarse: 0, count: 1 },
    { coarse: 1, count: 1 },
  ])
})

test('two large crossed factors are refused rather than waited for', () => {
  const rows = Array.from({ length: 900 }, (_, i) => [1, i])
  const random = [
    { name: 'a', levels: rows.map((_, i) => String(i % 301)) },
    { name: 'b', levels: rows.map((_, i) => String(i % 299)) },
  ]
  expect(() => crossProducts({ u: rows, random })).toThrow('random.levels')
})
