import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Decimal } from '@/lib/calc/cost/decimal'
import { massesFromPercentages } from '@/lib/calc/formula/masses-from-percentages'
import { stagesOfArm } from '@/lib/kitchen/decisions/rules'
import { costAndGain, type CostedArm } from '@/lib/kitchen/results/cost-and-gain'
import { loafMinorOf, totalMinorOf, type CostedLine } from '@/lib/kitchen/stores/costed-lines'

const day = '2026-03-02'
const price = (perKgMinor: string, currency = 'EUR') => ({ validFrom: '2026-01-01', perKgMinor, currency })
const line = (ingredientId: string, massG: number, perKgMinor: string | null, isWater = false): CostedLine => ({
  ingredientId,
  name: ingredientId,
  massG,
  isWater,
  price: perKgMinor === null ? null : price(perKgMinor),
})
const arm = ({ lines = [], ...change }: Partial<CostedArm>): CostedArm => ({
  arm: 0,
  lines,
  mixedLines: lines,
  goodPieces: [4, 4],
  loafMassG: 400,
  loafVolumeMl: 1600,
  dosed: [],
  volume: null,
  ...change,
})
const control = arm({ lines: [line('flour', 1000, '89.5'), line('water', 600, null, true)] })
const malted = (malt: string | null, change: Partial<CostedArm> = {}) =>
  arm({
    arm: 1,
    lines: [line('flour', 994, '89.5'), line('water', 600, null, true), line('malt', 6, malt)],
    goodPieces: [4, 3],
    ...change,
  })
const scaling = { scalingMassG: 400, doughLossPct: 0 }
const costs = (...arms: CostedArm[]) => costAndGain({ day, scaling, arms })
const textOf = (value: Decimal | null) => value?.toFixed() ?? null

describe('cost of an arm', () => {
  test('is exact: 89.5 cents of flour, over loaves of the formula’s weight, kg and litre', () => {
    const [own] = costs(control).arms
    expect(textOf(own!.perBatch)).toBe('89.5')
    expect(textOf(own!.perLoaf)).toBe('22.375')
    expect(textOf(own!.perKg)).toBe('55.9375')
    expect(textOf(own!.perLitre)).toBe('13.984375')
  })

  test('is set against the control, and what was spoilt is counted and in no cost', () => {
    // 994 g at 89.5 and 6 g at 650 a kg: 88.963 + 3.9 = 92.863 a dough of 1,600 g; two doughs gave 7 good loaves.
    const [, own] = costs(control, malted('650')).arms
    expect(textOf(own!.perBatch)).toBe('92.863')
    expect(textOf(own!.perLoaf)).toBe('23.21575')
    expect(textOf(own!.differencePerLoaf)).toBe('0.84075')
    expect(own!.good).toEqual({ pieces: 7, batches: 2 })
  })

  test('is no more of a loaf because the dough is heavier', () => {
    const onTop = arm({ arm: 1, lines: [...control.lines, line('malt', 0, '650'), line('milk', 400, null, true)] })
    const [own, heavier] = costs(control, onTop).arms
    // The same flour over 2,000 g instead of 1,600.
    expect(textOf(own!.perLoaf)).toBe('22.375')
    expect(textOf(heavier!.perLoaf)).toBe('17.9')
  })

  test('of a dough goes by what was mixed, of a loaf by the dough as it was planned', () => {
    const priced = [line('flour', 1000, '89.5'), line('water', 600, '10')]
    const [own] = costs(arm({ lines: priced, mixedLines: [priced[0]!, line('water', 700, '10')] })).arms
    expect(textOf(own!.perBatch)).toBe('96.5')
    expect(textOf(own!.perLoaf)).toBe('23.875')
  })

  test('is not given while a price is missing, and the ingredient is named; water is free', () => {
    const [priced, own] = costs(control, malted(null)).arms
    expect(own).toMatchObject({ unpriced: ['malt'], perBatch: null, perLoaf: null, differencePerLoaf: null })
    expect(priced!.unpriced).toEqual([])
  })

  test('is not given in two currencies', () => {
    const foreign = malted('650')
    const lines = foreign.lines.map((each) => (each.name === 'malt' ? { ...each, price: price('650', 'GBP') } : each))
    const { currency, arms } = costs(control, { ...foreign, lines, mixedLines: lines })
    expect(currency).toBeNull()
    expect(arms.every(({ mixedCurrencies, perBatch, perLoaf }) => mixedCurrencies && !perBatch && !perLoaf)).toBe(true)
  })

  test('needs no loaf counted; the count needs every dough', () => {
    const uncounted = costs(arm({ ...control, goodPieces: [4, null] })).arms[0]!
    expect(uncounted.good).toBeNull()
    expect(textOf(uncounted.perLoaf)).toBe('22.375')
    expect(textOf(costs(arm({ ...control, goodPieces: [0, 0] })).arms[0]!.perLoaf)).toBe('22.375')
    expect(costs(arm({ ...control, goodPieces: [] })).arms[0]!.good).toBeNull()
    expect(costs(arm({ ...control, loafVolumeMl: null })).arms[0]!).toMatchObject({ perLitre: null })
  })

  test('never has a cost out of no lines', () => {
    expect(costs(arm({ lines: [] })).arms[0]).toMatchObject({ perBatch: null, perLoaf: null })
  })
})

describe('one dough has one cost a loaf', () => {
  const mass = fc.double({ min: 1, max: 50, noNaN: true })
  const dough = fc.record({
    flourG: fc.double({ min: 500, max: 50_000, noNaN: true }),
    others: fc.array(mass, { minLength: 1, maxLength: 5 }),
    pricesMinor: fc.array(fc.integer({ min: 0, max: 5000 }), { minLength: 6, maxLength: 6 }),
    pieces: fc.integer({ min: 1, max: 100 }),
    scalingMassG: fc.double({ min: 30, max: 2000, noNaN: true }),
    doughLossPct: fc.double({ min: 0, max: 20, noNaN: true }),
  })

  test('whether it is read off the trial or off the version that is drafted from its arm', () =>
    fc.assert(
      fc.property(dough, ({ flourG, others, pricesMinor, pieces, scalingMassG, doughLossPct }) => {
        const masses = [flourG, ...others.map((pct) => (flourG * pct) / 100)]
        const lineOf = (massG: number, i: number) => line(`i${i}`, massG, String(pricesMinor[i]!))
        const [inTrial] = costAndGain({
          day,
          scaling: { scalingMassG, doughLossPct },
          arms: [arm({ lines: masses.map(lineOf) })],
        }).arms
        const [stage] = stagesOfArm(
          [{ id: 's', kind: 'final_dough', name: 'Dough' }],
          masses.map((massG, i) => ({
            stageId: 's',
            ingredientId: `i${i}`,
            massG,
            controlMassG: massG,
            kind: i === 0 ? ('flour' as const) : ('other' as const),
          })),
        )
        // The masses of the version's own batch, which is of another size than the trial's dough.
        const scaled = massesFromPercentages({
          lines: stage!.lines.map(({ pctFlour }, i) => ({ id: String(i), pctFlour, isFlour: i === 0 })),
          target: {
            by: 'pieces',
            pieces,
            pieceMassG: scalingMassG,
            lossShares: [doughLossPct / 100],
            losses: { on: 'dough', combine: 'added' },
          },
        })
        const lines = scaled.lines.map(({ massG }, i) => lineOf(massG, i))
        const drafted = loafMinorOf(lines, day, 'EUR', { scalingMassG, doughLossPct })!
        // As signatures had it before: the batch shared among its pieces.
        const shared = totalMinorOf(lines, day, 'EUR').dividedBy(pieces)
        const own = inTrial!.perLoaf!
        for (const other of [drafted, shared])
          expect(own.minus(other).abs().toNumber()).toBeLessThanOrEqual(1e-6 * own.toNumber() + 1e-12)
      }),
    ))
})
