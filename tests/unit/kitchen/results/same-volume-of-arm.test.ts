import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { costAndGain, type CostedArm } from '@/lib/kitchen/results/cost-and-gain'
import { dosedIn } from '@/lib/kitchen/results/same-volume-of-arm'
import type { CostedLine } from '@/lib/kitchen/stores/costed-lines'
import { forLong } from '@/tests/support/long'

const day = '2026-03-02'
const scaling = { scalingMassG: 400, doughLossPct: 2 }
const line = (ingredientId: string, massG: number, perKgMinor: string | null, currency = 'EUR'): CostedLine => ({
  ingredientId,
  name: ingredientId,
  massG,
  isWater: false,
  price: perKgMinor === null ? null : { validFrom: '2026-01-01', perKgMinor, currency },
})
const armOf = (arm: number, lines: CostedLine[], change: Partial<CostedArm> = {}): CostedArm => ({
  arm,
  lines,
  mixedLines: lines,
  goodPieces: [],
  loafMassG: 350,
  loafVolumeMl: 1600,
  dosed: arm === 0 ? [] : ['malt'],
  volume: arm === 0 ? null : { ratio: 1.05, low: 1.02, high: 1.08 },
  ...change,
})
const plain = [line('flour', 1000, '90'), line('salt', 20, '50')]
const malted = (perKgMinor: string | null = '400') => [...plain, line('malt', 6, perKgMinor)]
const found = (control: CostedArm, arm: CostedArm) => costAndGain({ day, scaling, arms: [control, arm] }).arms[1]!
const sameVolume = (arm: CostedArm, control = armOf(0, plain)) => found(control, arm).sameVolume
const outcomes = (arm: CostedArm, control = armOf(0, plain)) => {
  const same = sameVolume(arm, control)
  if (same?.outcome !== 'worked-out') return same?.outcome
  return [same.low, same.at, same.high].map((price) => price?.outcome)
}

describe('the price at which a litre costs as much as the control’s', () => {
  test('is that at which it does, whichever dough holds how much of it', () => {
    const mass = fc.integer({ min: 1, max: 3000 }).map((tenths) => tenths / 10)
    const q = fc.record({
      flourG: fc.integer({ min: 500, max: 2000 }),
      inControlG: fc.oneof(fc.constant(0), mass),
      inArmG: fc.oneof(fc.constant(0), mass),
      volumesMl: fc.tuple(fc.integer({ min: 800, max: 3000 }), fc.integer({ min: 800, max: 3000 })),
      otherMinor: fc.integer({ min: 0, max: 900 }),
    })
    let priced = 0
    fc.assert(
      fc.property(
        q.filter(({ inControlG, inArmG }) => inControlG + inArmG > 0),
        ({ flourG, inControlG, inArmG, volumesMl: [ofControl, ofArm], otherMinor }) => {
          const armsAt = (perKgMinor: string): [CostedArm, CostedArm] => {
            const lines = (massG: number, other: number) => [
              line('flour', flourG, '90'),
              line('other', other, String(otherMinor)),
              ...(massG === 0 ? [] : [line('malt', massG, perKgMinor)]),
            ]
            return [
              armOf(0, lines(inControlG, 20), { loafVolumeMl: ofControl }),
              armOf(1, lines(inArmG, 35), {
                loafVolumeMl: ofArm,
                volume: { ratio: ofArm / ofControl, low: null, high: null },
              }),
            ]
          }
          const dearer = (price: string) => {
            const [control, arm] = costAndGain({ day, scaling, arms: armsAt(price) }).arms
            return arm!.perLitre!.minus(control!.perLitre!).toNumber()
          }
          const same = found(...armsAt('400')).sameVolume
          if (same?.outcome !== 'worked-out') throw new Error(same?.outcome)
          expect(found(...armsAt('1')).sameVolume).toEqual(same)
          if ('perKgMinor' in same.at) {
            priced += 1
            const price = same.at.perKgMinor
            expect(Math.abs(dearer(price.toDecimalPlaces(12).toFixed()))).toBeLessThan(1e-9)
            expect(dearer(price.plus(50).toDecimalPlaces(12).toFixed()) > 0).toBe(same.at.outcome === 'up-to')
          } else if (same.at.outcome !== 'no-bearing') {
            for (const price of ['0', '100', '90000']) expect(dearer(price) > 1e-12).toBe(same.at.outcome === 'never')
          }
        },
      ),
      { seed: 77, numRuns: forLong(300, 5_000) },
    )
    expect(priced).toBeGreaterThan(50)
  })

  test('needs no price of what is dosed itself, and every other one', () => {
    expect(outcomes(armOf(1, malted(null)))).toEqual(['up-to', 'up-to', 'up-to'])
    expect(outcomes(armOf(1, [line('flour', 1000, null), line('malt', 6, '400')]))).toBe('not-costed')
    expect(outcomes(armOf(1, malted()), armOf(0, [line('flour', 1000, null)]))).toBe('not-costed')
    expect(outcomes(armOf(1, [...plain, line('malt', 6, '400', 'GBP')]))).toBe('not-costed')
  })

  test('goes by the ends of the volume’s interval, and is none where the loaves are no larger', () => {
    const same = sameVolume(armOf(1, malted()))
    if (same?.outcome !== 'worked-out' || !('perKgMinor' in same.at)) throw new Error(same?.outcome)
    const at = (price: typeof same.low) =>
      (price && 'perKgMinor' in price ? price.perKgMinor : new Decimal(0)).toNumber()
    expect(at(same.low)).toBeLessThan(at(same.at))
    expect(at(same.at)).toBeLessThan(at(same.high))
    expect(outcomes(armOf(1, malted(), { volume: { ratio: 1.01, low: 0.98, high: 1.04 } }))).toEqual([
      'never',
      'up-to',
      'up-to',
    ])
    expect(outcomes(armOf(1, malted(), { volume: { ratio: 0.97, low: 0.95, high: 0.99 } }))).toEqual([
      'never',
      'never',
      'never',
    ])
    expect(outcomes(armOf(1, malted(), { volume: { ratio: 1.05, low: null, high: null } }))).toEqual([
      undefined,
      'up-to',
      undefined,
    ])
  })

  test('is one from which on a dough pays that holds less of it, or none', () => {
    const lowered = { volume: { ratio: 1, low: null, high: null } }
    const fat = (massG: number) => [line('flour', 1000, '90'), ...(massG > 0 ? [line('malt', massG, '300')] : [])]
    expect(outcomes(armOf(1, fat(20), lowered), armOf(0, fat(40)))).toEqual([undefined, 'from', undefined])
    const without = sameVolume(armOf(1, fat(0), lowered), armOf(0, fat(40)))
    expect(without).toMatchObject({ outcome: 'worked-out', ingredient: 'malt', at: { outcome: 'from' } })
    const larger = { volume: { ratio: 1.2, low: null, high: null } }
    expect(outcomes(armOf(1, fat(20), larger), armOf(0, fat(40)))).toEqual([undefined, 'always', undefined])
  })

  test('is no single one of several ingredients, and none without a volume; the control has none', () => {
    expect(outcomes(armOf(1, malted(), { dosed: ['malt', 'salt'] }))).toBe('several-doses')
    expect(outcomes(armOf(1, malted(), { volume: null }))).toBe('not-measured')
    expect(costAndGain({ day, scaling, arms: [armOf(0, plain)] }).arms[0]!.sameVolume).toBeNull()
    expect(dosedIn([{ ingredientId: 'b' }, { ingredientId: 'a' }, { ingredientId: 'b' }])).toEqual(['a', 'b'])
  })
})
