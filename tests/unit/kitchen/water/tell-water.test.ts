import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { correctFrictionJPerKg } from '@/lib/calc/temperature/correct-friction'
import {
  firstOfDay,
  frictionOfDough,
  tellWater,
  waterFor,
  type DoughHeat,
  type KnownWater,
} from '@/lib/kitchen/water/tell-water.input'

const heat: DoughHeat = { waterJPerK: 380 * 4.186, flourJPerK: 600 * 1.8, restJPerK: 20 * 0.86 }
const facts: KnownWater = {
  outcome: 'known',
  targetC: 26,
  tapTempC: 12,
  mixMin: 10,
  heat,
  isGuess: false,
  mixer: { key: 'mixer', name: 'Spiral' },
  friction: { jPerKg: 16_000, by: 'learned', doughs: 5, isGuess: false },
  first: null,
}
const read = { flourC: 20, roomC: 22 }
const told = (change: Partial<KnownWater> = {}, temps: Parameters<typeof tellWater>[1] = read) =>
  tellWater({ ...facts, ...change }, temps, null)

/** What a kg of dough comes out at, by the heat that its parts, its water and its mixing bring to it. */
function doughTempOf(of: DoughHeat, waterC: number, { flourC, roomC }: typeof read, jPerKg: number): number {
  const { waterJPerK, flourJPerK, restJPerK } = of
  return (
    (waterJPerK * waterC + flourJPerK * flourC + restJPerK * roomC + jPerKg) / (waterJPerK + flourJPerK + restJPerK)
  )
}

const anyHeat = fc.record({
  waterJPerK: fc.double({ min: 200 * 4.186, max: 500 * 4.186, noNaN: true }),
  flourJPerK: fc.double({ min: 300, max: 1200, noNaN: true }),
  restJPerK: fc.double({ min: 0, max: 600, noNaN: true }),
})
const temp = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the water that is told', () => {
  it('brings the dough to the temperature of its plan, whatever goes in and however it is mixed', () => {
    fc.assert(
      fc.property(
        anyHeat,
        temp(18, 32),
        temp(5, 40),
        temp(5, 40),
        temp(-5_000, 40_000),
        (of, targetC, flourC, roomC, jPerKg) => {
          const found = told({ heat: of, targetC, friction: { ...facts.friction, jPerKg } }, { flourC, roomC })
          if (found.outcome !== 'told') throw new Error('these are temperatures of a bakery')
          expect(doughTempOf(of, found.waterTempC, { flourC, roomC }, jPerKg)).toBeCloseTo(targetC, 6)
        },
      ),
    )
  })

  it('is water only where there is such water, and else says ice, or that none will do', () => {
    fc.assert(
      fc.property(
        temp(18, 32),
        temp(0, 45),
        temp(0, 45),
        temp(0, 40_000),
        fc.boolean(),
        (targetC, flourC, roomC, jPerKg, knowsTap) => {
          const found = told(
            { targetC, friction: { ...facts.friction, jPerKg }, tapTempC: knowsTap ? 12 : null },
            { flourC, roomC },
          )
          if (found.outcome !== 'told') throw new Error('these are temperatures of a bakery')
          if (found.says === 'water') {
            expect(found.waterTempC).toBeGreaterThanOrEqual(0)
            expect(found.waterTempC).toBeLessThanOrEqual(45)
          }
          if (found.says === 'ice') expect(found.waterTempC).toBeLessThan(0)
          if (found.says === 'too-hot') expect(found.waterTempC).toBeGreaterThan(45)
          if (found.icePct !== null) expect(found.icePct).toBeGreaterThanOrEqual(0)
          // More than half of it does not melt in time.
          if (found.icePct !== null) expect(found.icePct).toBeLessThanOrEqual(50)
          if (found.says === 'too-cold' || found.says === 'too-hot') expect(found.icePct).toBeNull()
        },
      ),
    )
  })

  it('says what is missing in place of a guess', () => {
    expect(told({}, { flourC: null, roomC: null })).toEqual({ outcome: 'missing', missing: ['flour', 'room'] })
    expect(told({}, { flourC: null, roomC: 22 })).toEqual({ outcome: 'missing', missing: ['flour'] })
    expect(told({}, { flourC: 20, roomC: null })).toEqual({ outcome: 'missing', missing: ['room'] })
  })

  it('is none of temperatures that nothing has', () => {
    expect(told({}, { flourC: 500, roomC: 22 })).toEqual({ outcome: 'not-worked-out' })
    expect(told({}, { flourC: 20, roomC: -273 })).toEqual({ outcome: 'not-worked-out' })
  })

  it('flags a mixing that cools, or warms beyond all usage, and tells the water all the same', () => {
    expect(told()).toMatchObject({ isRiseOdd: false })
    expect(told({ friction: { ...facts.friction, jPerKg: -300 } })).toMatchObject({ outcome: 'told', isRiseOdd: true })
    expect(told({ friction: { ...facts.friction, jPerKg: 70_000 } })).toMatchObject({
      outcome: 'told',
      isRiseOdd: true,
    })
  })
})

describe('the day’s first dough', () => {
  it('corrects the friction as the rule for all doughs does', () => {
    fc.assert(
      fc.property(temp(5, 40), temp(5, 40), temp(0, 30_000), temp(-4, 4), (flourC, roomC, jPerKg, offC) => {
        const first = waterFor(facts, { flourC, roomC, jPerKg })
        if (first.waterTempC < 0) return
        const doughC = facts.targetC + offC
        const found = frictionOfDough(facts, { flourC, roomC, waterC: first.waterTempC, doughC })
        const corrected = correctFrictionJPerKg({
          usedFrictionJPerKg: jPerKg,
          heatCapacityJPerK: first.heatCapacityJPerK,
          doughMassG: 1000,
          wantedDoughTempC: facts.targetC,
          actualDoughTempC: doughC,
        })
        expect(found! * facts.mixMin).toBeCloseTo(corrected, 5)
      }),
    )
  })

  it('is the one that was begun first of those on which all four were read, and warmer doughs ask for colder water', () => {
    const dough = { id: 'a', code: 'QX7', begunAtMs: 1, jPerKgMin: 1_600 }
    const later = { ...dough, id: 'b', code: 'RT2', begunAtMs: 2, jPerKgMin: 2_000 }
    expect(firstOfDay([later, dough])).toEqual(dough)
    expect(firstOfDay([later, dough])?.code).toBe('QX7')
    expect(firstOfDay([{ ...dough, jPerKgMin: null }, later])?.code).toBe('RT2')
    expect(firstOfDay([])).toBeNull()
    const [plain, corrected] = [tellWater(facts, read, null), tellWater(facts, read, later)]
    if (plain.outcome !== 'told' || corrected.outcome !== 'told') throw new Error('both are told')
    expect(corrected.waterTempC).toBeLessThan(plain.waterTempC)
    expect([plain.correctedBy, corrected.correctedBy]).toEqual([null, 'RT2'])
  })

  it('teaches nothing as long as one of the four is not read, or is nothing that a dough has', () => {
    const all = { flourC: 20, roomC: 22, waterC: 14, doughC: 26 }
    expect(frictionOfDough(facts, all)).not.toBeNull()
    for (const name of ['flourC', 'roomC', 'waterC', 'doughC'] as const)
      expect(frictionOfDough(facts, { ...all, [name]: null })).toBeNull()
    expect(frictionOfDough(facts, { ...all, doughC: 600 })).toBeNull()
  })
})
