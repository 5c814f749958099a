import { describe, expect, test } from 'vitest'
import { armByDaySpread, type SpreadTrial } from '@/lib/calc/analysis/arm-by-day-spread'
import { normalDeviate } from '@/lib/calc/random/normal-deviate'
import { seededRandom, type Random } from '@/lib/calc/random/seeded-random'
import { forLong } from '@/tests/support/long'

const arms = ['control', 'b', 'c']

/** Doughs that differ by arm and day, by what each arm does of its own on each day, and by themselves. */
function trialOf(
  random: Random,
  q: { days: number; doughs: (arm: string, day: number) => number; armByDaySd: number; doughSd: number },
): SpreadTrial {
  const rows = Array.from({ length: q.days }, (_, day) => {
    const ofDay = 5 * normalDeviate(random)
    return arms.flatMap((arm, i) => {
      const cell = 100 + 3 * i + ofDay + q.armByDaySd * normalDeviate(random)
      return Array.from({ length: q.doughs(arm, day) }, () => ({
        arm,
        block: String(day),
        y: cell + q.doughSd * normalDeviate(random),
      }))
    })
  }).flat()
  return { rows, arms, assumedDoughSd: q.doughSd }
}

test('it is, by hand, what arm-day means scatter less what doughs bring to that', () => {
  // Control 10 and 10, the other 10 and 14, by two doughs 2 apart each: differences of the means are 0 and 4.
  const rows = [
    ['control', '1', 9],
    ['control', '1', 11],
    ['control', '2', 9],
    ['control', '2', 11],
    ['b', '1', 9],
    ['b', '1', 11],
    ['b', '2', 13],
    ['b', '2', 15],
  ].map(([arm, block, y]) => ({ arm: String(arm), block: String(block), y: Number(y) }))
  // Residuals are ±1: four squares on one degree of freedom. A dough has the variance 2 on 4, 1.5 with the assumed 1 on
  // 8 put to it: that is (4 · 2 + 8 · 1.25) / 12.
  const { sd, df, trials } = armByDaySpread([{ rows, arms: ['control', 'b'], assumedDoughSd: Math.sqrt(1.25) }])
  expect(trials).toBe(1)
  expect(sd ** 2).toBeCloseTo(4 - 1.5 / 2, 12)
  expect(df).toBeCloseTo(3.25 ** 2 / (4 ** 2 / 1 + 0.75 ** 2 / 12), 12)
})

describe('over many trials it finds the spread that made them', () => {
  const n = forLong(300, 6000)
  test.each([
    { what: 'one dough of each a day', doughs: () => 1, assumed: 2 },
    { what: 'two doughs of each a day', doughs: () => 2, assumed: 50 },
    {
      what: 'doughs lost here and there, and a kind that is not there on a day',
      doughs: (arm: string, day: number) => (arm === 'c' && day === 1 ? 0 : 1 + ((arm.length + day) % 3)),
      assumed: 50,
    },
  ])('$what', ({ what, doughs, assumed }) => {
    const random = seededRandom(what)
    const trials = Array.from({ length: n }, () => ({
      ...trialOf(random, { days: 4, doughs, armByDaySd: 1.5, doughSd: 2 }),
      assumedDoughSd: assumed,
    }))
    const { sd, df } = armByDaySpread(trials)
    // Standard error of a variance by its degrees of freedom.
    expect(Math.abs(sd ** 2 - 1.5 ** 2)).toBeLessThan(3.5 * 1.5 ** 2 * Math.sqrt(2 / df))
  })

  test('its degrees of freedom say how far off it is', () => {
    const random = seededRandom('scatter')
    const found = Array.from({ length: n }, () =>
      armByDaySpread(
        Array.from({ length: 20 }, () => trialOf(random, { days: 4, doughs: () => 2, armByDaySd: 2, doughSd: 1 })),
      ),
    )
    const mean = found.reduce((sum, { sd }) => sum + sd ** 2, 0) / n
    const variance = found.reduce((sum, { sd }) => sum + (sd ** 2 - mean) ** 2, 0) / (n - 1)
    const df = found.reduce((sum, one) => sum + one.df, 0) / n
    expect((2 * mean ** 2) / variance / df).toBeGreaterThan(0.75)
    expect((2 * mean ** 2) / variance / df).toBeLessThan(1.33)
  })
})

describe('what says nothing brings no degrees of freedom', () => {
  const random = seededRandom('nothing')

  test('no trial, and one of a single day', () => {
    expect(armByDaySpread([])).toMatchObject({ sd: 0, df: 0, trials: 0 })
    expect(armByDaySpread([trialOf(random, { days: 1, doughs: () => 2, armByDaySd: 1, doughSd: 1 })])).toMatchObject({
      sd: 0,
      df: 0,
      trials: 0,
    })
  })

  test('a spread that doughs explain, and one that is rounding', () => {
    const trial = trialOf(random, { days: 4, doughs: () => 1, armByDaySd: 1, doughSd: 1 })
    expect(armByDaySpread([{ ...trial, assumedDoughSd: 10 }])).toEqual({ sd: 0, df: 0, heldAtZero: true, trials: 1 })
    const even = trialOf(random, { days: 4, doughs: () => 2, armByDaySd: 0, doughSd: 0 })
    expect(armByDaySpread([{ ...even, assumedDoughSd: 0 }])).toMatchObject({ sd: 0, df: 0 })
  })
})

test('what is no spread and what no fit can do are refused', () => {
  const trial = trialOf(seededRandom('bad'), { days: 2, doughs: () => 1, armByDaySd: 1, doughSd: 1 })
  expect(() => armByDaySpread([{ ...trial, assumedDoughSd: -1 }])).toThrow('out-of-range')
  expect(() => armByDaySpread([{ ...trial, rows: [] }])).toThrow('no-day-counted')
  const many = Array.from({ length: 60 }, (_, day) =>
    Array.from({ length: 90 }, (__, arm) => ({ arm: String(arm), block: String(day), y: 1 })),
  ).flat()
  expect(() =>
    armByDaySpread([{ rows: many, arms: Array.from({ length: 90 }, (_, arm) => String(arm)), assumedDoughSd: 1 }]),
  ).toThrow('too-large')
})
