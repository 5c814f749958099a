import fc from 'fast-check'
import { expect, it } from 'vitest'
import { orderMarks, type OrderRow } from '@/lib/ui/charts/order-marks'

const words = { day: (day: number) => `Day ${day}`, tick: (value: number, digits: number) => value.toFixed(digits) }
const rows: OrderRow[] = [
  { code: '417', day: 1, loaves: [2400, 2500], mean: 2450 },
  { code: '902', day: 1, loaves: [2600, 2600], mean: 2600 },
  { code: '133', day: 2, loaves: [], mean: null },
]

it('has each dough in its order under its code, days apart, and no mark of an arm', () => {
  const { marks, height } = orderMarks({ rows, size: 'wide', words })
  const texts = marks.flatMap((mark) => (mark.kind === 'text' && !mark.key.startsWith('tick') ? [mark.text] : []))
  expect(texts).toEqual(['Day 1', '417', '902', 'Day 2', '133'])
  expect(marks.some(({ kind }) => kind === 'arm')).toBe(false)
  expect(marks.flatMap((mark) => (mark.kind === 'lines' && mark.key !== 'rules' ? mark.at : []))).toHaveLength(4 + 2)
  expect(height).toBe(12 + 3 * 26 + 30)
})

it('a mean lies between its loaves, and all of it within the picture', () => {
  fc.assert(
    fc.property(
      fc.array(fc.array(fc.integer({ min: -100_000, max: 100_000 }), { minLength: 1, maxLength: 8 }), {
        minLength: 1,
        maxLength: 20,
      }),
      fc.constantFrom('wide' as const, 'narrow' as const),
      (doughs, size) => {
        const drawn = orderMarks({
          rows: doughs.map((loaves, i) => ({
            code: `dough ${i}`,
            day: 1,
            loaves,
            mean: loaves.reduce((sum, loaf) => sum + loaf, 0) / loaves.length,
          })),
          size,
          words,
        })
        const places = (key: string) =>
          drawn.marks.flatMap((mark) => (mark.kind === 'lines' && mark.key === key ? mark.at : [])).map(({ x1 }) => x1)
        const [means, allLoaves] = [places('means'), places('loaves')]
        doughs.forEach((read, i) => {
          const mean = means[i]!
          const loaves = allLoaves.splice(0, read.length)
          expect(mean).toBeGreaterThanOrEqual(Math.min(...loaves) - 1e-6)
          expect(mean).toBeLessThanOrEqual(Math.max(...loaves) + 1e-6)
          for (const place of [mean, ...loaves]) {
            expect(place).toBeGreaterThanOrEqual(0)
            expect(place).toBeLessThanOrEqual(drawn.width)
          }
        })
      },
    ),
    { seed: 10, numRuns: 200 },
  )
})

it('one value, or none at all, has an axis too', () => {
  for (const loaves of [[0], [5], []])
    expect(
      orderMarks({ rows: [{ code: '1', day: 1, loaves, mean: loaves[0] ?? null }], size: 'narrow', words }).marks
        .length,
    ).toBeGreaterThan(3)
})
