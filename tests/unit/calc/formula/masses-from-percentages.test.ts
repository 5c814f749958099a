import fc from 'fast-check'
import { expect, test } from 'vitest'
import { massesFromPercentages } from '@/lib/calc/formula/masses-from-percentages'
import { forLong } from '@/tests/support/long'

const lines = [
  { id: 'flour', pctFlour: 100, isFlour: true },
  { id: 'water', pctFlour: 65, isFlour: false },
  { id: 'salt', pctFlour: 2, isFlour: false },
]

test('by flour, by dough mass and by pieces agree where they meet', () => {
  const byFlour = massesFromPercentages({ lines, target: { by: 'flour', flourMassG: 1000 } })
  const byDough = massesFromPercentages({ lines, target: { by: 'dough-mass', doughMassG: 1670 } })
  const byPieces = massesFromPercentages({
    lines,
    target: {
      by: 'pieces',
      pieces: 2,
      pieceMassG: 751.5,
      lossShares: [0.1],
      losses: { on: 'dough', combine: 'added' },
    },
  })
  byFlour.lines.forEach((l, i) => {
    expect(byDough.lines[i]?.massG).toBeCloseTo(l.massG, 9)
    expect(byPieces.lines[i]?.massG).toBeCloseTo(l.massG, 9)
  })
})

test('the lines sum to the dough and keep their proportions', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 120, noNaN: true }), { maxLength: 20 }),
      fc.double({ min: 1, max: 1e6, noNaN: true }),
      (pcts, doughMassG) => {
        const result = massesFromPercentages({
          lines: [
            { id: 'flour', pctFlour: 100, isFlour: true },
            ...pcts.map((pctFlour, i) => ({ id: `l${i}`, pctFlour, isFlour: false })),
          ],
          target: { by: 'dough-mass', doughMassG },
        })
        const sum = result.lines.reduce((s, l) => s + l.massG, 0)
        expect(Math.abs(sum / doughMassG - 1)).toBeLessThan(1e-12)
        result.lines
          .slice(1)
          .forEach((l, i) => expect(l.massG).toBeCloseTo((result.flourMassG * (pcts[i] ?? 0)) / 100, 6))
      },
    ),
    { seed: 1703, numRuns: forLong(200, 4_000) },
  )
})

test('flours that are not 100 are warned of and taken as they stand', () => {
  const result = massesFromPercentages({
    lines: [
      { id: 'a', pctFlour: 70, isFlour: true },
      { id: 'b', pctFlour: 20, isFlour: true },
    ],
    target: { by: 'flour', flourMassG: 1000 },
  })
  expect(result.warnings).toEqual([{ code: 'flours-not-100', value: 90 }])
  expect(result.flourMassG).toBe(900)
})

test('three thirds printed to two decimals are no fault', () => {
  const third = (id: string) => ({ id, pctFlour: 33.33, isFlour: true })
  expect(
    massesFromPercentages({ lines: [third('a'), third('b'), third('c')], target: { by: 'flour', flourMassG: 1 } })
      .warnings,
  ).toEqual([])
})

test('no flour and a line named twice are refused', () => {
  expect(() =>
    massesFromPercentages({
      lines: [{ id: 'w', pctFlour: 60, isFlour: false }],
      target: { by: 'flour', flourMassG: 1 },
    }),
  ).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => massesFromPercentages({ lines: [...lines, ...lines], target: { by: 'flour', flourMassG: 1 } })).toThrow(
    expect.objectContaining({ code: 'duplicate' }),
  )
})
