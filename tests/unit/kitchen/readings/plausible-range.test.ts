import { describe, expect, it } from 'vitest'
import { plausibleRange, type RangeFacts } from '@/lib/kitchen/readings/plausible-range'
import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'

const facts: RangeFacts = {
  scalingMassG: 480,
  plannedWaterG: new Map([
    [0, 721.6],
    [1, 700],
  ]),
  usualMlPerG: new Map([
    ['loaf-volume', 4],
    ['own', 3],
  ]),
}
const nothing: RangeFacts = { scalingMassG: null, plannedWaterG: new Map(), usualMlPerG: new Map() }
const measureOf = (code: string) => {
  const { least, most, ...measure } = standardMeasures.find((each) => each.code === code)!
  return { ...measure, id: code, plausibleLeast: least, plausibleMost: most }
}
const rangeOf = (code: string, arm = 0, known = facts) => Object.values(plausibleRange(measureOf(code), arm, known))

describe('the plausible range of a reading', () => {
  it('is half to one and a half times what the plan weighs, in whole grams', () => {
    expect(rangeOf('dough-mass')).toEqual([240, 720])
    expect(rangeOf('loaf-mass')).toEqual([240, 720])
    expect(rangeOf('water-added')).toEqual([360, 1083])
    expect(rangeOf('water-added', 1)).toEqual([350, 1050])
  })

  it('is around the volume of recent doughs, at the weight at which this one is scaled', () => {
    expect(rangeOf('loaf-volume')).toEqual([960, 2880])
    expect(rangeOf('loaf-volume', 0, { ...facts, scalingMassG: 240 })).toEqual([480, 1440])
    expect(Object.values(plausibleRange({ ...measureOf('loaf-volume'), id: 'own', code: null }, 0, facts))).toEqual([
      720, 2160,
    ])
  })

  it('is the measure’s own where nothing says more', () => {
    expect(rangeOf('dough-temp')).toEqual([10, 40])
    expect(rangeOf('proof-time')).toEqual([300, 86_400])
    expect(rangeOf('loaf-volume', 0, { ...facts, usualMlPerG: new Map() })).toEqual([30, 20_000])
    expect(rangeOf('loaf-mass', 0, nothing)).toEqual([20, 5000])
    expect(rangeOf('water-added', 2)).toEqual([0, 500_000])
    expect(
      Object.values(
        plausibleRange({ ...measureOf('loaf-mass'), code: null, plausibleLeast: 0, plausibleMost: 30 }, 0, facts),
      ),
    ).toEqual([0, 30])
  })
})
