import { expect, test } from 'vitest'
import { readyScales } from '@/lib/calc/weighing/ready-scales'

const coarse = { id: 'coarse', resolutionG: 1, repeatabilityG: 0.5, capacityG: 10_000 }
const fine = { id: 'fine', resolutionG: 0.01, repeatabilityG: 0.01, capacityG: 200 }

test('the finest comes first, and one that is outdone in fineness and capacity is left out', () => {
  const outdone = { id: 'old', resolutionG: 5, repeatabilityG: 2, capacityG: 9_000 }
  expect(readyScales([coarse, outdone, fine]).map(({ id }) => id)).toEqual(['fine', 'coarse'])
  expect(readyScales([coarse, { ...coarse, id: 'twin' }])).toHaveLength(1)
})

test('no scale, one id twice and a scale without a step are refused', () => {
  expect(() => readyScales([])).toThrow(expect.objectContaining({ code: 'empty' }))
  expect(() => readyScales([fine, fine])).toThrow(
    expect.objectContaining({ code: 'duplicate', facts: expect.objectContaining({ field: 'scales[1].id' }) }),
  )
  expect(() => readyScales([{ ...fine, resolutionG: 0 }])).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'scales[0].resolutionG' }) }),
  )
})
