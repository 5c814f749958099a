import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  allergenChange,
  changesAllergens,
  figuresOf,
  flourOffPct,
  inProduction,
  stateOfVersion,
  type FiguredStage,
  type VersionTimes,
} from '@/lib/kitchen/formulas/rules'
import { compositionOf } from '@/lib/kitchen/stores/composition-of'

const at = (text: string) => new Date(`2026-03-02T${text}Z`)
const version = (
  number: number,
  signedAt: string | null,
  effectiveAt = signedAt,
): VersionTimes & { discardedAt: Date | null } => ({
  id: `v${number}`,
  number,
  signedAt: signedAt === null ? null : at(signedAt),
  effectiveAt: effectiveAt === null ? null : at(effectiveAt),
  discardedAt: null,
})

describe('the flour of all stages', () => {
  const flours = (...pcts: number[]) => pcts.map((pctFlour) => ({ kind: 'flour' as const, pctFlour }))

  it('makes 100 % within 0.01, edges included', () => {
    expect(flourOffPct(flours(33.33, 33.33, 33.33))).toBe(0)
    expect(flourOffPct(flours(100.01))).toBe(0)
    expect(flourOffPct(flours(99.989))).toBeCloseTo(-0.011, 9)
    expect(flourOffPct(flours(60, 39))).toBeCloseTo(-1, 9)
    expect(flourOffPct(flours(100, 3))).toBeCloseTo(3, 9)
  })

  it('is flour only, and none is 100 % off', () => {
    expect(flourOffPct([...flours(100), { kind: 'seed_or_grain', pctFlour: 12 }, { kind: 'malt', pctFlour: 1 }])).toBe(
      0,
    )
    expect(flourOffPct([{ kind: 'water', pctFlour: 60 }])).toBe(-100)
  })
})

describe('the state of a version', () => {
  const draft = version(3, null)
  const old = version(1, '04:00:00.000')
  const next = version(2, '05:00:00.000', '06:00:00.000')
  const all = [draft, old, next]

  it('is draft until signed, coming until its time', () => {
    expect(stateOfVersion(draft, all, at('23:00:00.000'))).toBe('draft')
    expect(stateOfVersion(next, all, at('05:59:59.999'))).toBe('coming')
  })

  it('is discarded once it was dropped', () => {
    expect(stateOfVersion({ ...draft, discardedAt: at('05:00:00.000') }, all, at('23:00:00.000'))).toBe('discarded')
  })

  it('changes over at the very millisecond that was signed for', () => {
    expect(stateOfVersion(old, all, at('05:59:59.999'))).toBe('in-production')
    expect(stateOfVersion(next, all, at('06:00:00.000'))).toBe('in-production')
    expect(stateOfVersion(old, all, at('06:00:00.000'))).toBe('withdrawn')
  })

  it('has nothing in production before the first time', () => {
    expect(inProduction(all, at('03:59:59.999'))).toBeNull()
    expect(inProduction(all, at('04:00:00.000'))?.id).toBe('v1')
  })

  it('goes by the time of effect, then by the signature, then by the number', () => {
    const announced = version(2, '04:00:00.000', '10:00:00.000')
    const urgent = version(3, '05:00:00.000')
    expect(inProduction([announced, urgent], at('09:59:59.999'))?.id).toBe('v3')
    expect(inProduction([announced, urgent], at('10:00:00.000'))?.id).toBe('v2')
    expect(inProduction([version(2, '05:00:00.000', '10:00:00.000'), announced], at('10:00:00.000'))?.signedAt).toEqual(
      at('05:00:00.000'),
    )
    expect(inProduction([version(4, '05:00:00.000'), version(5, '05:00:00.000')], at('05:00:00.000'))?.id).toBe('v5')
  })

  it('lets exactly one be in production once a time has come, in whatever order they are read', () => {
    const someVersions = fc.uniqueArray(
      fc.record({
        number: fc.integer({ min: 1, max: 30 }),
        signed: fc.option(fc.integer({ min: 0, max: 5 })),
        wait: fc.integer({ min: 0, max: 5 }),
      }),
      { selector: ({ number }) => number, minLength: 1, maxLength: 8 },
    )
    fc.assert(
      fc.property(someVersions, fc.integer({ min: 0, max: 12 }), (drawn, hour) => {
        const versions = drawn.map(({ number, signed, wait }) => ({
          id: `v${number}`,
          number,
          signedAt: signed === null ? null : new Date(signed),
          effectiveAt: signed === null ? null : new Date(signed + wait),
          discardedAt: null,
        }))
        const states = versions.map((each) => stateOfVersion(each, versions, new Date(hour)))
        const due = versions.some(({ effectiveAt }) => effectiveAt !== null && effectiveAt.getTime() <= hour)
        expect(states.filter((state) => state === 'in-production')).toHaveLength(due ? 1 : 0)
        expect(inProduction([...versions].reverse(), new Date(hour))?.id).toBe(
          inProduction(versions, new Date(hour))?.id,
        )
      }),
      { seed: 20260302 },
    )
  })
})

describe('a change of allergens', () => {
  const sum = (known: ('milk' | 'gluten' | 'egg')[], ...unchecked: string[]) => ({
    known,
    uncheckedIngredients: unchecked.map((name) => ({ id: name, name })),
  })

  it('is named both ways', () => {
    expect(allergenChange(sum(['gluten', 'milk']), sum(['gluten', 'egg']))).toEqual({
      added: ['egg'],
      gone: ['milk'],
      newlyUnchecked: [],
      noLongerUnchecked: [],
    })
    expect(changesAllergens(allergenChange(sum(['gluten']), sum(['gluten'])))).toBe(false)
  })

  it('is also an ingredient that nobody has checked', () => {
    const change = allergenChange(sum(['gluten']), sum(['gluten'], 'paste'))
    expect(change.newlyUnchecked).toEqual(['paste'])
    expect(changesAllergens(change)).toBe(true)
    expect(changesAllergens(allergenChange(sum([], 'paste'), sum([], 'paste')))).toBe(false)
    expect(changesAllergens(allergenChange(sum([], 'paste'), sum([])))).toBe(true)
  })
})

describe('the figures of a formula', () => {
  const of = (kind: FiguredStage['lines'][number]['kind'], pctFlour: number, waterPct: number | null = null) => ({
    ingredientId: kind,
    kind,
    pctFlour,
    composition: waterPct === null ? null : compositionOf([{ figure: 'water', gPer100G: waterPct }]),
  })
  // Worked by hand: 100 flour (30 of it fermented ahead), 60 water, 10 milk at 88 % water, 2 salt, 1 leaven.
  const stages: FiguredStage[] = [
    { kind: 'pre_ferment', lines: [of('flour', 30), of('water', 30, 100)] },
    {
      kind: 'final_dough',
      lines: [of('flour', 70), of('water', 30, 100), of('dairy', 10, 88), of('salt', 2, 0), of('leaven', 1)],
    },
  ]

  it('name their conventions and what they do not know', () => {
    const figures = figuresOf(stages, null)
    expect(figures).toMatchObject({
      floursPct: 100,
      totalPct: 173,
      plainWaterPct: 60,
      preFermentedFlourPct: 30,
      batch: null,
    })
    expect(figures?.waterBesideFlour.pctFlour).toBeCloseTo(68.8, 9)
    expect(figures?.waterBesideFlour.unknownIngredientIds).toEqual(['leaven'])
    expect(figures?.doughYield).toEqual({ flourAndWater: 160, everything: 173 })
    expect(figures?.stages.map((stage) => stage.flourSharePct)).toEqual([30, 70])
  })

  it('weigh the batch with its loss: 10 pieces of 865 g at 0 % and at 2 %', () => {
    const exact = figuresOf(stages, { pieces: 10, scalingMassG: 865, doughLossPct: 0 })?.batch
    expect(exact?.flourMassG).toBeCloseTo(5000, 9)
    expect(exact?.lineMassesG).toEqual(
      [
        [1500, 1500],
        [3500, 1500, 500, 100, 50],
      ].map((masses) => masses.map((massG) => expect.closeTo(massG, 9) as number)),
    )
    expect(exact?.stageMassesG[0]).toBeCloseTo(3000, 9)
    expect(figuresOf(stages, { pieces: 10, scalingMassG: 865, doughLossPct: 2 })?.batch?.doughMassG).toBeCloseTo(
      8650 / 0.98,
      6,
    )
  })

  it('are not there without flour', () => {
    expect(figuresOf([{ kind: 'final_dough', lines: [of('water', 60)] }], null)).toBeNull()
  })
})

describe('an ingredient’s composition', () => {
  it('is unknown where no figure is, and salt is 2.5 times sodium', () => {
    expect(compositionOf([])).toBeNull()
    expect(
      compositionOf([
        { figure: 'salt', gPer100G: 2.5 },
        { figure: 'fat', gPer100G: 0 },
      ]),
    ).toMatchObject({ sodiumMgPer100g: 1000, fatPct: 0, waterPct: null })
  })
})
