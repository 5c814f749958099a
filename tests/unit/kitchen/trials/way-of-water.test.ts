import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlanWaters } from '@/lib/kitchen/trials/plan-types'
import { wayOfWater } from '@/lib/kitchen/trials/way-of-water'
import { forLong } from '@/tests/support/long'

const nothing: PlanWaters = { hot: null, chilled: null, ice: null }
const ask = (more: Partial<Parameters<typeof wayOfWater>[0]>) =>
  wayOfWater({ waterG: 956, wantedTempC: 30, tapTempC: 12, waters: nothing, resolutionG: 0.01, ...more })
const hot = (tempC: number, mostC = 60): PlanWaters => ({ ...nothing, hot: { tempC, mostC } })

/* Expected values by heat balance with equal specific heats, worked by hand: arithmetic, no source. */
describe('the way to a water', () => {
  it('of 30 °C from 12 and 55 °C: 956 g are 400.19 g hot and 555.81 g cold', () => {
    // 956 · 18 / 43 = 400.186
    expect(ask({ waters: hot(55) })).toEqual({
      outcome: 'mix',
      parts: [
        { from: 'tap', massG: 555.81, tempC: 12, isUsual: false },
        { from: 'hot', massG: 400.19, tempC: 55, isUsual: false },
      ],
    })
  })

  it('of 18.477 °C is 812 g at 12 °C and 144 g at 55 °C on a scale of 1 g', () => {
    // (812 · 12 + 144 · 55) / 956 = 18.477
    expect(ask({ wantedTempC: 18.477, resolutionG: 1, waters: hot(55) }).parts.map(({ massG }) => massG)).toEqual([
      812, 144,
    ])
  })

  it('of 68 °C is refused where 60 °C is the limit: the nearest is all at 60 °C', () => {
    expect(ask({ wantedTempC: 68, waters: hot(60) })).toEqual({
      outcome: 'not-possible',
      reason: 'hotter-than-allowed',
      nearestTempC: 60,
      parts: [{ from: 'hot', massG: 956, tempC: 60, isUsual: false }],
    })
  })

  it('keeps to the limit with a tap that gives more: 80 °C water is mixed down to 60', () => {
    const way = ask({ wantedTempC: 68, waters: hot(80) })
    expect(way).toMatchObject({ outcome: 'not-possible', nearestTempC: 60 })
    // 956 · 48 / 68 = 674.82
    expect(way.parts.map(({ massG }) => massG)).toEqual([281.18, 674.82])
  })

  it('of 8 °C from a tap of 12 °C without a chiller has 41.6 to 41.7 g ice in place of water', () => {
    // 956 · 4 / (12 + L/c): 41.565 with L/c = 80 (trade rule), 41.660 with 334/4.186; ours is 333.6/4.186: 41.705.
    const way = ask({ wantedTempC: 8 })
    expect(way.parts.map(({ from }) => from)).toEqual(['tap', 'ice'])
    expect(way.parts[1]!.massG).toBeGreaterThan(41.56)
    expect(way.parts[1]!.massG).toBeLessThan(41.71)
    expect(way.parts[0]!.massG + way.parts[1]!.massG).toBeCloseTo(956, 9)
  })

  it('of 8 °C with a chiller of 3 °C needs no ice: 424.89 g of tap in 956 g', () => {
    // 956 · (8 − 3) / (12 − 3) = 531.11 from the tap, 424.89 chilled.
    const way = ask({ wantedTempC: 8, waters: { ...nothing, chilled: { tempC: 3 } } })
    expect(way).toMatchObject({
      outcome: 'mix',
      parts: [
        { from: 'chilled', massG: 424.89 },
        { from: 'tap', massG: 531.11 },
      ],
    })
  })

  it('of 1 °C with that chiller is chilled water with ice', () => {
    const way = ask({ wantedTempC: 1, waters: { ...nothing, chilled: { tempC: 3 }, ice: { tempC: -18 } } })
    expect(way.parts.map(({ from, tempC, isUsual }) => [from, tempC, isUsual])).toEqual([
      ['chilled', 3, false],
      ['ice', -18, false],
    ])
  })

  it('is no more than half ice, which is said to be the nearest', () => {
    const way = ask({ wantedTempC: -40 })
    expect(way).toMatchObject({ outcome: 'not-possible', reason: 'too-much-ice' })
    expect(way.parts.map(({ massG }) => massG)).toEqual([478, 478])
  })

  it('says what nobody wrote down, and only where it is used', () => {
    expect(ask({}).parts.map(({ isUsual }) => isUsual)).toEqual([false, true])
    expect(ask({ wantedTempC: 12 }).parts).toEqual([{ from: 'tap', massG: 956, tempC: 12, isUsual: false }])
  })

  it('adds up to the line on marks of its scale, and mixes to what was asked for within a mark', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 50, max: 20_000 }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.integer({ min: 0, max: 30 }),
        fc.constantFrom(0.1, 1, 5),
        fc.option(fc.double({ min: 0, max: 10, noNaN: true })),
        (steps, wantedTempC, tapTempC, resolutionG, chiller) => {
          const waterG = Number((steps * resolutionG).toPrecision(12))
          const way = ask({
            waterG,
            wantedTempC,
            tapTempC,
            resolutionG,
            waters: { ...hot(60), chilled: chiller === null ? null : { tempC: chiller } },
          })
          const total = way.parts.reduce((sum, { massG }) => sum + massG, 0)
          expect(total).toBeCloseTo(waterG, 6)
          for (const { massG } of way.parts)
            expect(Math.abs(massG / resolutionG - Math.round(massG / resolutionG))).toBeLessThan(1e-6)
          if (way.outcome === 'mix' && way.parts.every(({ from }) => from !== 'ice')) {
            const tempC = way.parts.reduce((sum, part) => sum + part.massG * part.tempC, 0) / total
            expect(Math.abs(tempC - wantedTempC)).toBeLessThanOrEqual((60 * resolutionG) / 2 / waterG + 1e-6)
          }
        },
      ),
      { seed: 5, numRuns: forLong(200, 4000) },
    )
  })
})
