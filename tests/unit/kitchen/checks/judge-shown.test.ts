import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  judgeShown,
  offMostOfGauge,
  offMostOfScale,
  offMostOfThermometer,
} from '@/lib/kitchen/checks/judge-shown.input'

describe('what an instrument shows of something that is known', () => {
  it.each([
    ['right', 1000, 1000, 1, 0, true],
    ['one step off, where one is allowed', 1001, 1000, 1, 1, true],
    ['a tenth off, which is a tenth though no double is', 1000.1, 1000, 0.1, 0.1, true],
    ['a tenth below', 999.9, 1000, 0.1, -0.1, true],
    ['two tenths off', 1000.2, 1000, 0.1, 0.2, false],
    ['off by anything, where nothing is allowed', 0.001, 0, 0, 0.001, false],
    ['half a degree warm', 0.5, 0, 0.5, 0.5, true],
    ['six tenths cold', -0.6, 0, 0.5, -0.6, false],
  ])('is %s', (_, shown, known, offMost, off, isGood) => {
    expect(judgeShown({ shown, known, offMost })).toEqual({ off, isGood })
  })

  it('is judged by how far off it is, above as below', () => {
    const tenths = fc.integer({ min: -100_000, max: 100_000 }).map((each) => each / 10)
    fc.assert(
      fc.property(tenths, fc.integer({ min: 0, max: 100 }), fc.integer({ min: 0, max: 100 }), (known, off, allowed) => {
        for (const sign of [1, -1]) {
          const shown = known + (sign * off) / 10
          expect(judgeShown({ shown, known, offMost: allowed / 10 }).isGood).toBe(off <= allowed)
        }
      }),
      { seed: 80 },
    )
  })

  it('may be off by what the bakery says, otherwise by a step; a thermometer by half a degree at least', () => {
    expect(offMostOfScale({ offMostG: 2, resolutionG: 0.1 })).toBe(2)
    expect(offMostOfScale({ offMostG: 0, resolutionG: 0.1 })).toBe(0)
    expect(offMostOfScale({ offMostG: null, resolutionG: 0.1 })).toBe(0.1)
    expect(offMostOfThermometer({ offMostC: 0.2, resolutionC: 0.1 })).toBe(0.2)
    expect(offMostOfThermometer({ offMostC: null, resolutionC: 0.1 })).toBe(0.5)
    expect(offMostOfThermometer({ offMostC: null, resolutionC: 1 })).toBe(1)
  })

  it.each([
    ['what the bakery says', 5, 1000, 5],
    ['nothing, where the bakery says so', 0, 1000, 0],
    ['2 % of the block', null, 1000, 20],
    ['2 % of a small block', null, 210, 4.2],
    ['2 % of a block whose share no double is', null, 1015, 20.3],
  ])('of a volume gauge may be off by %s', (_, offMostMl, blockMl, expected) => {
    expect(offMostOfGauge({ offMostMl, blockMl })).toBe(expected)
    expect(judgeShown({ shown: blockMl + expected, known: blockMl, offMost: expected }).isGood).toBe(true)
    expect(judgeShown({ shown: blockMl - expected - 0.1, known: blockMl, offMost: expected }).isGood).toBe(false)
  })
})
