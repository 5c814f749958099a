import { expect, test } from 'vitest'
import { sourStages } from '@/lib/calc/preferment/sour-stages'

const stages = [
  { hoursH: 5, stageHydrationPct: 100 },
  { hoursH: 8, stageHydrationPct: 60 },
  { hoursH: 3, stageHydrationPct: 90 },
]

test('what is added over all stages is the last one in all', () => {
  const found = sourStages({ souredFlourG: 900, longStandingFactor: 1.7, stages })
  expect(found.stages.reduce((sum, { addedFlourG }) => sum + addedFlourG, 0)).toBeCloseTo(900, 10)
  expect(found.stages.reduce((sum, { addedWaterG }) => sum + addedWaterG, 0)).toBeCloseTo(810, 10)
})

test('six hours are six, and more than six count as longer', () => {
  const one = (hoursH: number) =>
    sourStages({ souredFlourG: 600, longStandingFactor: 2, stages: [{ hoursH, stageHydrationPct: 80 }] }).starterG
  expect(one(6)).toBeCloseTo(100, 12)
  expect(one(7)).toBeCloseTo(600 / 14, 12)
})

test('a stage so dry that water would have to come out is refused by its number', () => {
  const dry = [
    { hoursH: 4, stageHydrationPct: 200 },
    { hoursH: 1.5, stageHydrationPct: 60 },
  ]
  expect(() => sourStages({ souredFlourG: 900, longStandingFactor: 1.5, stages: dry })).toThrow(
    expect.objectContaining({
      facts: expect.objectContaining({ field: 'stages[1].stageHydrationPct', reason: 'stage-too-dry' }),
    }),
  )
})

test('no stage, and a stage of less than an hour, are refused', () => {
  expect(() => sourStages({ souredFlourG: 900, longStandingFactor: 1.5, stages: [] })).toThrow(
    expect.objectContaining({ code: 'empty' }),
  )
  expect(() =>
    sourStages({ souredFlourG: 900, longStandingFactor: 1.5, stages: [{ hoursH: 0.5, stageHydrationPct: 90 }] }),
  ).toThrow(expect.objectContaining({ code: 'out-of-range' }))
})
