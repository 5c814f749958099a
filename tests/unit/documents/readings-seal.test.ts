import { expect, it } from 'vitest'
import { readingsSeal } from '@/lib/documents/evidence/readings-seal'

const readings = [
  { id: '0195f0c0-0000-7000-8000-000000000001', contentHash: 'a'.repeat(64) },
  { id: '0195f0c0-0000-7000-8000-000000000002', contentHash: 'b'.repeat(64) },
]

// By GNU coreutils' sha256sum of the two lines, and of nothing.
it('seals readings as evidence of format 1 has them', () => {
  expect(readingsSeal(readings)).toEqual({
    count: 2,
    hash: '1d110a29d70b1007e8a74d8ccb4365a86bd6a4ebd003dbc809c64669c0a9eba0',
  })
  expect(readingsSeal([])).toEqual({
    count: 0,
    hash: 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
  })
})

it('has another seal when one is corrected, added or out of order', () => {
  const others = [
    [],
    readings.slice(1),
    readings.toReversed(),
    [...readings, readings[0]!],
    [readings[0]!, { ...readings[1]!, contentHash: 'c'.repeat(64) }],
  ]
  expect(new Set([readings, ...others].map((some) => readingsSeal(some).hash)).size).toBe(1 + others.length)
})
