import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formulaTotals } from '@/lib/calc/formula/formula-totals'
import type { Formula } from '@/lib/calc/formula/types'
import { line } from '@/tests/support/formula-samples'
import { forLong } from '@/tests/support/long'

const staged: Formula = {
  stages: [
    { id: 'dough', kind: 'final-dough' },
    { id: 'sponge', kind: 'pre-ferment' },
    { id: 'soaker', kind: 'soaker' },
  ],
  lines: [
    line('flour', 'flour', 700),
    line('water', 'water', 350),
    line('sponge flour', 'flour', 200, null, { stageId: 'sponge' }),
    line('sponge water', 'water', 200, null, { stageId: 'sponge' }),
    line('meal', 'flour', 100, null, { stageId: 'soaker' }),
    line('soaker water', 'water', 100, null, { stageId: 'soaker' }),
  ],
}

test('stage totals add up to the dough, and only pre-ferments are pre-fermented', () => {
  const totals = formulaTotals(staged)
  expect(totals.flourMassG).toBe(1000)
  expect(totals.doughMassG).toBe(1650)
  expect(totals.totalPctFlour).toBeCloseTo(165, 12)
  expect(totals.preFermentedFlourShare).toBeCloseTo(0.2, 12)
  expect(totals.stages.map((s) => s.massG)).toEqual([1050, 400, 200])
  expect(totals.stages[1]?.lines).toEqual([
    { lineId: 'sponge flour', massG: 200, pctStageFlour: 100 },
    { lineId: 'sponge water', massG: 200, pctStageFlour: 100 },
  ])
})

test('a stage without flour has no percentages of its own', () => {
  const totals = formulaTotals({
    stages: [...staged.stages, { id: 'seeds', kind: 'soaker' }],
    lines: [...staged.lines, line('seed water', 'water', 50, null, { stageId: 'seeds' })],
  })
  expect(totals.stages[3]?.lines[0]?.pctStageFlour).toBeNull()
})

describe('properties', () => {
  const masses = fc.array(fc.double({ min: 0.01, max: 5000, noNaN: true }), { minLength: 1, maxLength: 20 })
  test('flour lines sum to 100 % and percentages do not change with scale', () => {
    fc.assert(
      fc.property(masses, masses, fc.double({ min: 0.001, max: 1000, noNaN: true }), (flours, others, factor) => {
        const build = (k: number): Formula => ({
          stages: [{ id: 'dough', kind: 'final-dough' }],
          lines: [
            ...flours.map((m, i) => line(`f${i}`, 'flour', m * k)),
            ...others.map((m, i) => line(`o${i}`, 'other', m * k)),
          ],
        })
        const one = formulaTotals(build(1))
        const scaled = formulaTotals(build(factor))
        const flourPct = one.lines.filter((l) => l.lineId.startsWith('f')).reduce((s, l) => s + l.pctFlour, 0)
        expect(flourPct).toBeCloseTo(100, 9)
        scaled.lines.forEach((l, i) => expect(l.pctFlour / (one.lines[i]?.pctFlour ?? 0)).toBeCloseTo(1, 9))
        expect(one.stages.reduce((s, x) => s + x.massG, 0)).toBeCloseTo(one.doughMassG, 6)
      }),
      { seed: 1701, numRuns: forLong(200, 4_000) },
    )
  })
})
