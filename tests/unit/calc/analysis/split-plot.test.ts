import { expect, test } from 'vitest'
import { splitPlot } from '@/lib/calc/analysis/split-plot'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { findEntry } from '@/lib/calc/catalogue'

const random = seededRandom('split')
const names = { blocks: ['1', '2', '3'], arms: ['control', 'b'], levels: ['day 1', 'day 3', 'day 5'] }
const rows = names.blocks.flatMap((block) =>
  names.arms.flatMap((arm) => {
    const batch = 5 * normalDeviate(random)
    return names.levels.map((level) => ({ block, arm, level, y: 100 + batch + normalDeviate(random) }))
  }),
)
const q = { rows, arms: names.arms, levels: names.levels }

test('sums of squares and degrees of freedom add up to the total', () => {
  const { anova } = splitPlot(q)
  const mean = rows.reduce((sum, row) => sum + row.y, 0) / rows.length
  expect(anova.reduce((sum, row) => sum + row.sumSquares, 0)).toBeCloseTo(
    rows.reduce((sum, row) => sum + (row.y - mean) ** 2, 0),
    9,
  )
  expect(anova.reduce((sum, row) => sum + row.df, 0)).toBe(rows.length - 1)
})

test('moving a whole batch leaves level and interaction alone', () => {
  const moved = splitPlot({
    ...q,
    rows: rows.map((row) => (row.block === '2' && row.arm === 'b' ? { ...row, y: row.y + 40 } : row)),
  })
  expect(moved.anova[3].f).toBeCloseTo(splitPlot(q).anova[3].f!, 8)
  expect(moved.anova[4].f).toBeCloseTo(splitPlot(q).anova[4].f!, 8)
})

test('missing, repeated and unknown cells, and no variation, are refused', () => {
  expect(() => splitPlot({ ...q, rows: rows.slice(1) })).toThrow('missing-cell')
  expect(() => splitPlot({ ...q, rows: [...rows, rows[0]!] })).toThrow('repeated-cell')
  expect(() => splitPlot({ ...q, rows: [...rows, { ...rows[0]!, level: 'day 9' }] })).toThrow('unknown-name')
  expect(() => splitPlot({ ...q, rows: rows.map((row) => ({ ...row, y: 4 })) })).toThrow('zero-variance')
})

test('in the catalogue the levels may be given their order, which the order of rows does not change', () => {
  const entry = findEntry('analysis/split-plot')!
  const question = { ...(entry.example as { rows: unknown[] }), levelOrder: ['day 3', 'day 1'] }
  const levelsOf = (rows: unknown[]) =>
    (entry.run({ ...question, rows }) as { levelMeans: { level: string }[] }).levelMeans.map(({ level }) => level)
  expect(levelsOf(question.rows)).toEqual(['day 3', 'day 1'])
  expect(levelsOf([...question.rows].reverse())).toEqual(['day 3', 'day 1'])
  expect(() => entry.run({ ...question, levelOrder: ['day 1'] })).toThrow('level-not-ordered')
})
