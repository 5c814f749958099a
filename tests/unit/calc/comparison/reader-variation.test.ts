import { expect, test } from 'vitest'
import { readerVariation } from '@/lib/calc/comparison/reader-variation'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { expectRefusal, moved } from '@/tests/support/arm-rows'
import { findEntry } from '@/lib/calc/catalogue'

function readings(q: {
  loaves: number
  readers: number
  repeats: number
  sd: { loaf: number; reader: number; both: number; repeat: number }
}) {
  const random = seededRandom('readers')
  const draw = (sd: number) => sd * normalDeviate(random)
  const readers = Array.from({ length: q.readers }, () => draw(q.sd.reader))
  return Array.from({ length: q.loaves }).flatMap((_, loaf) => {
    const level = 2500 + draw(q.sd.loaf)
    return readers.flatMap((own, reader) => {
      const both = draw(q.sd.both)
      return Array.from({ length: q.repeats }, () => ({
        loaf: String(loaf),
        reader: String(reader),
        y: level + own + both + draw(q.sd.repeat),
      }))
    })
  })
}

test('many readings give the spread back that made them', () => {
  const got = readerVariation({
    rows: readings({ loaves: 150, readers: 60, repeats: 2, sd: { loaf: 40, reader: 12, both: 6, repeat: 8 } }),
    confidence: 0.95,
  })
  // about four standard errors of each
  expect(Math.abs(got.loaf.sd / 40 - 1)).toBeLessThan(0.24)
  expect(Math.abs(got.reader.sd / 12 - 1)).toBeLessThan(0.38)
  expect(Math.abs(got.readerByLoaf.sd / 6 - 1)).toBeLessThan(0.06)
  expect(Math.abs(got.repeat.sd / 8 - 1)).toBeLessThan(0.03)
  expect(got.readingSd).toBeCloseTo(Math.hypot(got.reader.sd, got.readerByLoaf.sd, got.repeat.sd), 9)
})
test('readers who agree but for chance have no spread of their own, and that is said', () => {
  const rows = [1, 3, 3, 1, 11, 13, 13, 11].map((y, i) => ({
    loaf: String(Math.floor(i / 4)),
    reader: String(Math.floor(i / 2) % 2),
    y,
  }))
  const got = readerVariation({ rows, confidence: 0.95 })
  expect(got.readerByLoaf).toEqual({ sd: 0, df: 1, heldAtZero: true })
  expect(got.repeat.sd).toBeCloseTo(Math.SQRT2, 12)
  expect(readerVariation({ rows: moved(rows, 1000, 2), confidence: 0.95 }).readingShare).toBeCloseTo(
    got.readingShare,
    9,
  )
})
test('ten thousand values are no matter', () => {
  const rows = readings({ loaves: 250, readers: 20, repeats: 2, sd: { loaf: 9, reader: 3, both: 1, repeat: 2 } })
  expect(readerVariation({ rows, confidence: 0.95 }).repeat.df).toBe(5000)
})
test('one reader, one loaf, uneven or single readings and identical values are refused', () => {
  const cell = (loaf: string, reader: string, ...ys: number[]) => ys.map((y) => ({ loaf, reader, y }))
  const of =
    (...cells: { loaf: string; reader: string; y: number }[][]) =>
    () =>
      readerVariation({ rows: cells.flat(), confidence: 0.95 })
  expectRefusal(of(), 'empty')
  expectRefusal(of(cell('1', 'a', 1, 2), cell('2', 'a', 3, 5)), 'empty')
  expectRefusal(of(cell('1', 'a', 1, 2), cell('1', 'b', 3, 5)), 'empty')
  expectRefusal(
    of(cell('1', 'a', 1), cell('1', 'b', 3), cell('2', 'a', 1), cell('2', 'b', 3)),
    'not-possible',
    'one-reading-per-cell',
  )
  expectRefusal(
    of(cell('1', 'a', 1, 2), cell('1', 'b', 3, 5), cell('2', 'a', 1, 2), cell('2', 'b', 3)),
    'wrong-shape',
    'uneven-readings',
  )
  expectRefusal(
    of(cell('1', 'a', 4, 4), cell('1', 'b', 4, 4), cell('2', 'a', 4, 4), cell('2', 'b', 4, 4)),
    'not-possible',
    'zero-variance',
  )
  expectRefusal(
    of(cell('1', 'a', 4, NaN), cell('1', 'b', 4, 4), cell('2', 'a', 4, 4), cell('2', 'b', 4, 4)),
    'not-finite',
  )
})

test('of one reader alone the catalogue refuses at the rows, which were asked for', () => {
  const entry = findEntry('comparison/reader-variation')!
  const rows = ['one', 'other'].flatMap((loaf) => [1, 2].map((y) => ({ loaf, reader: 'Ada', y })))
  expect(() => entry.run({ rows, confidence: 0.95 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'rows' }) as unknown }),
  )
})
