import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { DoughRow } from '@/lib/calc/analysis/count-arm-days'
import { studentizedResiduals } from '@/lib/calc/analysis/studentized-residuals'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'
import { rateCheck } from '@/tests/support/rate-check'

/** Doughs of as many arms on as many days, whose effects add up but for a spread between doughs. */
function doughs(seed: string, arms: number, days: number, sd = 30): DoughRow[] {
  const random = seededRandom(seed)
  return Array.from({ length: days * arms }, (_, i) => ({
    arm: `a${i % arms}`,
    block: `d${Math.floor(i / arms)}`,
    y: 2500 + 60 * (i % arms) + 45 * Math.floor(i / arms) + sd * normalDeviate(random),
  }))
}
const spoil = (rows: readonly DoughRow[], row: number, by: number) =>
  rows.map((one, i) => (i === row ? { ...one, y: one.y! + by } : one))

test('a dough far off is named; with a control and one arm, one dough each a day, its pair', () => {
  const three = studentizedResiduals({ rows: spoil(doughs('three', 3, 5), 7, -1000), alpha: 0.05 })
  expect(three).toMatchObject({ outcome: 'this-dough', suspects: [7] })
  const two = studentizedResiduals({ rows: spoil(doughs('two', 2, 8), 9, -1000), alpha: 0.05 })
  expect(two).toMatchObject({ outcome: 'one-of-these', suspects: [8, 9] })
})

test('a dough that is off where all else fits without error is named, though nothing is left to judge it by', () => {
  const found = studentizedResiduals({ rows: spoil(doughs('exact', 3, 5, 0), 7, -1), alpha: 0.05 })
  expect(found).toMatchObject({ outcome: 'this-dough', suspects: [7] })
  expect(Number.isFinite(found.doughs[7]!.t)).toBe(true)
  const pair = studentizedResiduals({ rows: spoil(doughs('exact', 2, 6, 0), 4, 1), alpha: 0.05 })
  expect(pair).toMatchObject({ outcome: 'one-of-these', suspects: [4, 5] })
  expect(studentizedResiduals({ rows: doughs('exact', 3, 5, 0), alpha: 0.05 })).toMatchObject({
    outcome: 'none-stands-out',
    suspects: [],
  })
})

test('a shift of a whole day or arm, a unit, and an order of rows change nothing', () => {
  fc.assert(
    fc.property(fc.nat(10_000), fc.integer({ min: -900, max: 900 }), fc.constantFrom(0.01, 7), (seed, shift, scale) => {
      const rows = doughs(String(seed), 3, 4)
      const one = studentizedResiduals({ rows, alpha: 0.05 })
      const moved = rows.map((row) => ({
        ...row,
        y: scale * (row.y! + (row.block === 'd2' ? shift : 0) - (row.arm === 'a1' ? shift : 0)),
      }))
      const two = studentizedResiduals({ rows: moved.toReversed(), alpha: 0.05 })
      expect(two.doughs.map(({ t }) => t)).toEqual(one.doughs.map(({ t }) => expect.closeTo(t!, 6)).toReversed())
      expect(two.suspects.map((row) => rows.length - 1 - row).toReversed()).toEqual(one.suspects)
    }),
  )
})

test('a dough that alone stands for its arm or day fits by itself and is not judged', () => {
  const rows = [...doughs('alone', 2, 4), { arm: 'a0', block: 'd9', y: 9999 }]
  const found = studentizedResiduals({ rows, alpha: 0.05 })
  expect(found.doughs.at(-1)).toMatchObject({ t: null, pAdjusted: null })
  expect(found.judged).toBe(8)
})

test('days without a dough in common with the others are fitted by themselves', () => {
  const [one, two] = [doughs('left', 2, 4), doughs('right', 2, 4)]
  const apart = two.map((row) => ({ ...row, arm: `x${row.arm}`, block: `x${row.block}` }))
  const both = studentizedResiduals({ rows: [...one, ...apart], alpha: 0.05 })
  expect(both.errorDf).toBe(2 * studentizedResiduals({ rows: one, alpha: 0.05 }).errorDf)
  const residuals = [one, two].flatMap((rows) => studentizedResiduals({ rows, alpha: 0.05 }).doughs)
  expect(both.doughs.map(({ residual }) => residual)).toEqual(
    residuals.map(({ residual }) => expect.closeTo(residual, 8)),
  )
})

test('where nothing can tell that is the answer, and the bakery’s own variation can tell more', () => {
  const rows = spoil(doughs('few', 2, 2), 1, -900)
  expect(studentizedResiduals({ rows, alpha: 0.05 })).toMatchObject({ outcome: 'cannot-be-told', doughs: [] })
  const own = { sd: 30, df: 12 }
  expect(studentizedResiduals({ rows, alpha: 0.05, own }).outcome).toBe('one-of-these')
  expect(studentizedResiduals({ rows: rows.slice(0, 1), alpha: 0.05, own }).outcome).toBe('cannot-be-told')
})

test('no dough, no figure, and figures that are no level or spread are refused', () => {
  const rows = doughs('bad', 3, 4)
  expect(() => studentizedResiduals({ rows: rows.map(({ arm, block }) => ({ arm, block })), alpha: 0.05 })).toThrow(
    'empty',
  )
  expect(() => studentizedResiduals({ rows: spoil(rows, 3, NaN), alpha: 0.05 })).toThrow(/not-finite.*rows\[3\]\.y/)
  expect(() => studentizedResiduals({ rows, alpha: 5 })).toThrow('alpha')
  expect(() => studentizedResiduals({ rows, alpha: 0.05, own: { sd: 0, df: 12 } })).toThrow('own.sd')
  expect(() => studentizedResiduals({ rows, alpha: 0.05, own: { sd: 30, df: 0 } })).toThrow('own.df')
  expect(() => studentizedResiduals({ rows: doughs('many', 2, 1000), alpha: 0.05 })).toThrow('too-large')
})

rateCheck({
  what: 'a dough is said to stand out where none does: 3 test doughs beside the control, 5 days',
  stated: 0.05,
  count: () => {
    const trials = forLong(400, 10_000)
    const isFlagged = (_: unknown, seed: number) =>
      studentizedResiduals({ rows: doughs(`none ${seed}`, 4, 5), alpha: 0.05 }).suspects.length > 0
    return { trials, wrong: Array.from({ length: trials }, isFlagged).filter(Boolean).length }
  },
})
