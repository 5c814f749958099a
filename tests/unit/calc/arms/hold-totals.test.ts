import { describe, expect, test } from 'vitest'
import { holdTotals } from '@/lib/calc/arms/hold-totals'

/** Two lines of 100 g: the first carries total 0, the second total 1, each with a trace of the other's. */
const q = {
  shares: [
    [1, 0.02],
    [0.01, 1],
  ],
  matters: [
    [true, false],
    [false, true],
  ],
  broughtG: [10, 5],
  totalScaleG: [100, 100],
  lowerG: [-100, -100],
  upperG: [Infinity, Infinity],
  lineScaleG: [100, 100],
  toleranceG: 1e-7,
}
const offG = (more: Partial<typeof q>) => {
  const question = { ...q, ...more }
  const { changeG, isMet } = holdTotals(question)
  return {
    changeG,
    isMet,
    off: question.broughtG.map((brought, k) =>
      changeG.reduce((sum, change, j) => sum + (question.shares[k]?.[j] ?? 0) * change, brought),
    ),
  }
}

describe('totals', () => {
  test('are met together, traces made up for', () => {
    const { off, isMet } = offG({})
    expect(isMet).toEqual([true, true])
    for (const each of off) expect(Math.abs(each)).toBeLessThan(1e-9)
  })
  test('that nothing carries move nothing', () => {
    const { changeG, isMet } = offG({
      matters: [
        [false, false],
        [false, true],
      ],
    })
    expect(isMet).toEqual([false, true])
    expect(changeG[0]).toBe(0)
    expect(changeG[1]).toBeCloseTo(-5, 9)
  })
  test('that are too much empty what carries them, and leave the others held', () => {
    const { changeG, isMet, off } = offG({ broughtG: [140, 5] })
    expect(isMet).toEqual([false, true])
    expect(changeG[0]).toBe(-100)
    expect(off[0]).toBeCloseTo(40 + 0.02 * (changeG[1] ?? 0), 9)
    expect(Math.abs(off[1] ?? 1)).toBeLessThan(1e-9)
  })
  test('come in their order where one line carries both', () => {
    const both = {
      shares: [
        [1, 0],
        [1, 0],
      ],
      matters: [
        [true, false],
        [true, false],
      ],
    }
    const { isMet, changeG } = offG({ ...both, broughtG: [10, 4] })
    expect(isMet).toEqual([true, false])
    expect(changeG[0]).toBeCloseTo(-10, 9)
  })
  test('without a line that may move are met by none', () => {
    expect(holdTotals({ ...q, shares: [[], []], matters: [[], []], lowerG: [], upperG: [], lineScaleG: [] })).toEqual({
      changeG: [],
      isMet: [false, false],
    })
  })
})
