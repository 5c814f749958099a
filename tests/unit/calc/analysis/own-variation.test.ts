import { expect, test } from 'vitest'
import { ownVariation } from '@/lib/calc/analysis/own-variation'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'
import { findEntry } from '@/lib/calc/catalogue'

/** Doughs of one formula with given spread; `loaves` may differ by batch. */
function doughs(
  seed: string,
  q: { blocks: number; batches: number; loaves: (batch: number) => number; sd: [number, number, number] },
) {
  const random = seededRandom(seed)
  return Array.from({ length: q.blocks }).flatMap((_, block) => {
    const day = q.sd[0] * normalDeviate(random)
    return Array.from({ length: q.batches }).flatMap((__, batch) => {
      const dough = q.sd[1] * normalDeviate(random)
      return Array.from({ length: q.loaves(batch) }, (___, loaf) => ({
        arm: 'control',
        block: String(block),
        batch: `${block}/${batch}`,
        loaf: String(loaf),
        value: 2500 + day + dough + q.sd[2] * normalDeviate(random),
      }))
    })
  })
}

test.each(Array.from({ length: forLong(1, 20) }, (_, i) => (i === 0 ? 'own' : `own ${i}`)))(
  'many doughs give the spread back that made them, also with unequal loaves (%s)',
  (seed) => {
    const readings = doughs(seed, { blocks: 400, batches: 4, loaves: (batch) => 2 + batch, sd: [40, 30, 20] })
    const got = ownVariation({ readings, confidence: 0.95 })
    // about four standard errors of each
    expect(Math.abs(got.block!.sd / 40 - 1)).toBeLessThan(0.18)
    expect(Math.abs(got.batch.sd / 30 - 1)).toBeLessThan(0.1)
    expect(Math.abs(got.loaf.sd / 20 - 1)).toBeLessThan(0.05)
  },
)

test('a variance below zero is held at zero, and said', () => {
  const readings = [10, 12, 12, 10].map((value, i) => ({
    arm: 'control',
    batch: i < 2 ? 'x' : 'y',
    loaf: String(i),
    value,
  }))
  const got = ownVariation({ readings, confidence: 0.95 })
  expect(got.batch).toEqual({ sd: 0, df: 1, heldAtZero: true })
  expect(got.block).toBeNull()
})

test('what cannot be told apart is refused', () => {
  const q = { loaves: () => 2, sd: [1, 1, 1] as [number, number, number] }
  expect(() => ownVariation({ readings: doughs('x', { ...q, blocks: 3, batches: 1 }), confidence: 0.95 })).toThrow(
    'one-batch-per-block',
  )
  expect(() =>
    ownVariation({ readings: doughs('x', { ...q, blocks: 3, batches: 2, loaves: () => 1 }), confidence: 0.95 }),
  ).toThrow('one-loaf-per-batch')
  const two = doughs('x', { ...q, blocks: 1, batches: 2 }).map((row) => ({ ...row, arm: row.batch }))
  expect(() => ownVariation({ readings: two, confidence: 0.95 })).toThrow('several-arms')
})

test('the catalogue names days at zero as it does batches', () => {
  const entry = findEntry('analysis/own-variation')!
  const reading = (block: string, batch: string, value: number) => ({ block, batch, loaf: String(value), value })
  // day means alike, batches far apart
  const alike = [
    reading('x', '1', 10),
    reading('x', '1', 11),
    reading('x', '2', 20),
    reading('x', '2', 21),
    reading('y', '3', 10),
    reading('y', '3', 11),
    reading('y', '4', 20),
    reading('y', '4', 21),
  ]
  expect(entry.run({ readings: alike, confidence: 0.95 })).toMatchObject({
    blockHeldAtZero: true,
    batchHeldAtZero: false,
    blockSd: 0,
  })
  const apart = alike.map((own) => ({ ...own, value: own.value + (own.block === 'y' ? 100 : 0) }))
  expect(entry.run({ readings: apart, confidence: 0.95 })).toMatchObject({ blockHeldAtZero: false })
})
