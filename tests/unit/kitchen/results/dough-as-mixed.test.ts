import { describe, expect, it } from 'vitest'
import { doughAsMixed, withWater, type MixedLine } from '@/lib/kitchen/results/dough-as-mixed'
import { measuredBatch } from '@/tests/support/evidence-samples'

const line = (
  kind: MixedLine['ingredient']['kind'],
  weighedG: number,
  stage: MixedLine['stage']['kind'] = 'final_dough',
): MixedLine => ({ weighedG, ingredient: { kind }, stage: { kind: stage } })
/** Flour 200 and water 200 in a sponge; flour 800, water 400 and salt 20 in the dough: 60 % water, yield 162. */
const lines = [
  line('flour', 200, 'pre_ferment'),
  line('water', 200, 'pre_ferment'),
  line('flour', 800),
  line('water', 400),
  line('salt', 20),
]
const batchesWith = (...water: (number | null)[]) =>
  water.map((each, i) =>
    measuredBatch({
      arm: 1,
      day: i + 1,
      values: [4],
      change: { conditions: { 'dough-temp': null, 'proof-time': null, 'water-added': each } },
    }),
  )

/* Arithmetic by hand: water on flour and dough from 100 parts of flour. */
describe('a dough as it was mixed', () => {
  it('has the water that was taken, the mean of its doughs: 430 and 450 g are 64 % on flour and yield 166', () => {
    const { waterTakenG, hydrationPct, doughYield } = doughAsMixed(1, lines, batchesWith(430, 450))
    expect(waterTakenG).toBe(440)
    expect(hydrationPct).toEqual({ planned: 60, taken: 64 })
    expect(doughYield).toEqual({ planned: 162, taken: 166 })
  })

  it('is as planned, and nothing is said to be taken, unless every dough has its water in the book', () => {
    for (const batches of [[], batchesWith(null), batchesWith(430, null)]) {
      expect(doughAsMixed(1, lines, batches)).toMatchObject({
        waterTakenG: null,
        hydrationPct: { planned: 60, taken: null },
        doughYield: { planned: 162, taken: null },
      })
    }
  })

  it('shares the water out over its lines in proportion, and leaves the sponge alone', () => {
    const split = [line('water', 200, 'pre_ferment'), line('water', 300), line('water', 100)]
    expect(withWater(split, 480).map(({ weighedG }) => weighedG)).toEqual([200, 360, 120])
  })

  it('stays as planned where no mixing water was planned, and has no figure without flour', () => {
    expect(withWater([line('flour', 1000)], 300)).toEqual([line('flour', 1000)])
    expect(doughAsMixed(1, [line('other', 500), line('water', 300)], batchesWith(310))).toMatchObject({
      hydrationPct: null,
      doughYield: null,
    })
  })
})
