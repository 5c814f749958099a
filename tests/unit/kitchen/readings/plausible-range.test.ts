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
const rangeOf = (code: string, known = facts) => Object.values(plausibleRange(measureOf(code), known))

describe('the plausible range of a reading', () => {
  it('is half to one and a half times what the plan weighs, in whole grams', () => {
    expect(rangeOf('dough-mass')).toEqual([240, 720])
    expect(rangeOf('loaf-mass')).toEqual([240, 720])
    expect(rangeOf('water-added', { ...facts, plannedWaterG: new Map([[0, 721.6]]) })).toEqual([360, 1083])
  })

  it('is one for all doughs of a trial, from the driest to the wettest, so that it tells nothing of a code', () => {
    expect(rangeOf('water-added')).toEqual([350, 1083])
  })

  it('is around the volume of recent doughs, at the weight at which this one is scaled', () => {
    expect(rangeOf('loaf-volume')).toEqual([960, 2880])
    expect(rangeOf('loaf-volume', { ...facts, scalingMassG: 240 })).toEqual([480, 1440])
    expect(Object.values(plausibleRange({ ...measureOf('loaf-volume'), id: 'own', code: null }, facts))).toEqual([
      720, 2160,
    ])
  })

  it('is the measure’s own where nothing says more', () => {
    expect(rangeOf('dough-temp')).toEqual([10, 40])
    expect(rangeOf('proof-time')).toEqual([300, 86_400])
    expect(rangeOf('loaf-volume', { ...facts, usualMlPerG: new Map() })).toEqual([30, 20_000])
    expect(rangeOf('loaf-mass', nothing)).toEqual([20, 5000])
    expect(rangeOf('water-added', { ...facts, plannedWaterG: new Map() })).toEqual([0, 500_000])
    expect(
      Object.values(
        plausibleRange({ ...measureOf('loaf-mass'), code: null, plausibleLeast: 0, plausibleMost: 30 }, facts),
      ),
    ).toEqual([0, 30])
  })
})
