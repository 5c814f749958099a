import { describe, expect, test } from 'vitest'
import { checkDose } from '@/lib/calc/dosing/check-dose'
import { dosingEntries } from '@/lib/calc/dosing/entries'
import type { ActiveSource, DoseLimit } from '@/lib/calc/dosing/types'

const source = (massG: number, activeShare: number, more: Partial<ActiveSource> = {}): ActiveSource => ({
  lineId: 'x',
  substance: 'invented acid',
  form: 'acid',
  massG,
  activeShare,
  ...more,
})
const limit: DoseLimit = {
  id: 'L',
  jurisdiction: 'nowhere',
  food: 'bread',
  basis: 'flour',
  form: 'acid',
  substances: ['invented acid'],
  isPermitted: true,
  maxMgPerKg: 200,
  countsFlourContent: false,
  toleranceShare: 0,
  source: 'invented',
  checkedOn: '2026-01-01',
}
const check = (
  sources: ActiveSource[],
  more: Partial<DoseLimit> = {},
  rest: Partial<Parameters<typeof checkDose>[0]> = {},
) =>
  checkDose({
    sources,
    flourMassG: 1000,
    finishedFoodPer100Flour: null,
    flourContentMgPerKg: {},
    conversions: [],
    customary: [],
    limits: [{ ...limit, ...more }],
    ...rest,
  }).limits[0]

describe('limits', () => {
  test('one active from two sources is added up', () => {
    expect(check([source(0.15, 1)])?.code).toBe('within-checked-limit')
    expect(check([source(0.15, 1), source(0.4, 0.17, { lineId: 'y' })])).toMatchObject({
      code: 'over-checked-limit',
      mgPerKg: expect.closeTo(218, 9),
    })
  })
  test('exactly on the limit is within it', () => expect(check([source(0.2, 1)])?.code).toBe('within-checked-limit'))
  test('an unchecked limit says so either way', () => {
    expect(check([source(0.1, 1)], { checkedOn: null })?.code).toBe('within-unchecked-limit')
    expect(check([source(0.3, 1)], { checkedOn: null })?.code).toBe('over-unchecked-limit')
  })
  test('as much as needed has no number and still says what was found', () =>
    expect(check([source(0.3, 1)], { maxMgPerKg: null })).toMatchObject({
      code: 'as-needed',
      mgPerKg: expect.closeTo(300, 9),
      maxMgPerKg: null,
    }))
  test('not permitted is not permitted at any dose, and nothing is nothing', () => {
    expect(check([source(0.001, 1)], { isPermitted: false, maxMgPerKg: null })?.code).toBe('not-permitted')
    expect(check([source(0.001, 1)], { isPermitted: false, maxMgPerKg: null, checkedOn: null })?.code).toBe(
      'not-permitted-unchecked',
    )
    expect(check([source(0, 1)], { isPermitted: false, maxMgPerKg: null })?.code).toBe('within-checked-limit')
  })
  test('a form that cannot be converted never passes', () => {
    expect(check([source(0.1, 1, { form: 'salt' })])).toMatchObject({
      code: 'cannot-judge',
      missing: ['form-conversion'],
      mgPerKg: null,
    })
    expect(
      check([source(0.25, 1, { form: 'salt' })], {}, { conversions: [{ from: 'salt', to: 'acid', factor: 0.7 }] }),
    ).toMatchObject({
      code: 'within-checked-limit',
      mgPerKg: expect.closeTo(175, 9),
    })
  })
  test('a limit on finished food needs the bread yield', () => {
    expect(check([source(0.3, 1)], { basis: 'finished-food' })).toMatchObject({
      code: 'cannot-judge',
      missing: ['finished-food-mass'],
    })
    expect(check([source(0.3, 1)], { basis: 'finished-food' }, { finishedFoodPer100Flour: 150 })).toMatchObject({
      code: 'within-checked-limit',
      mgPerKg: expect.closeTo(200, 9),
    })
  })
  test('what the flour already holds counts where the limit says so', () => {
    const counts = { countsFlourContent: true }
    expect(check([source(0.1, 1)], counts)).toMatchObject({ code: 'cannot-judge', missing: ['flour-content'] })
    expect(check([source(0.3, 1)], counts)?.code).toBe('over-checked-limit')
    expect(check([source(0.1, 1)], counts, { flourContentMgPerKg: { 'invented acid': 120 } })).toMatchObject({
      code: 'over-checked-limit',
      mgPerKg: expect.closeTo(220, 9),
    })
  })
  test('a limit shared by two substances adds them up', () =>
    expect(
      check([source(0.15, 1), source(0.1, 1, { substance: 'other acid' })], {
        substances: ['invented acid', 'other acid'],
      })?.code,
    ).toBe('over-checked-limit'))
  test('a substance under no limit here is not counted', () =>
    expect(check([source(5, 1, { substance: 'other' })])).toMatchObject({ code: 'within-checked-limit', mgPerKg: 0 }))
})

test('outside a customary range is a warning code', () => {
  const of = (massG: number) =>
    checkDose({
      sources: [source(massG, 0.5)],
      flourMassG: 1000,
      finishedFoodPer100Flour: null,
      flourContentMgPerKg: {},
      conversions: [],
      customary: [
        { substance: 'invented acid', form: 'acid', minMgPerKgFlour: 1000, maxMgPerKgFlour: 5000, source: 'invented' },
      ],
      limits: [],
    }).customary[0]?.code
  expect([of(1), of(4), of(11)]).toEqual(['below-customary', 'customary', 'above-customary'])
})

describe('what a flour brings from the mill', () => {
  test.each([true, false])(
    'a forbidden substance that only the flour holds is not permitted (counts: %s)',
    (countsFlourContent) =>
      expect(
        check(
          [],
          { isPermitted: false, maxMgPerKg: null, countsFlourContent },
          { flourContentMgPerKg: { 'invented acid': 3 } },
        )?.code,
      ).toBe('not-permitted'),
  )
  test('a flour of which it is said that it holds none passes', () =>
    expect(
      check(
        [],
        { isPermitted: false, maxMgPerKg: null, countsFlourContent: true },
        { flourContentMgPerKg: { 'invented acid': 0 } },
      )?.code,
    ).toBe('within-checked-limit'))
})

test('a limit is widened by its printed rounding only', () => {
  expect(check([source(0.2009, 1)], { toleranceShare: 0.005 })?.code).toBe('within-checked-limit')
  expect(check([source(0.2011, 1)], { toleranceShare: 0.005 })?.code).toBe('over-checked-limit')
  expect(() => check([source(0.2, 1)], { toleranceShare: 0.006 })).toThrow(
    expect.objectContaining({
      code: 'out-of-range',
      facts: expect.objectContaining({ field: 'limits[0].toleranceShare', max: 0.005 }),
    }),
  )
})

test('two factors for one pair of forms are refused, at the second', () => {
  const conversions = [
    { from: 'salt', to: 'acid', factor: 0.7 },
    { from: 'salt', to: 'other', factor: 0.9 },
    { from: 'salt', to: 'acid', factor: 0.8 },
  ]
  expect(() => check([source(0.1, 1, { form: 'salt' })], {}, { conversions })).toThrow(
    expect.objectContaining({ code: 'duplicate', facts: expect.objectContaining({ field: 'conversions[2].to' }) }),
  )
})

describe('a customary range is of its own form', () => {
  const of = (conversions: { from: string; to: string; factor: number }[]) =>
    checkDose({
      sources: [source(1.2, 1, { form: 'salt' })],
      flourMassG: 1000,
      finishedFoodPer100Flour: null,
      flourContentMgPerKg: {},
      conversions,
      customary: [
        { substance: 'invented acid', form: 'acid', minMgPerKgFlour: 500, maxMgPerKgFlour: 1000, source: 'invented' },
      ],
      limits: [],
    }).customary[0]
  test('1200 mg of a salt that is 70 % acid are 840 mg of acid: customary', () =>
    expect(of([{ from: 'salt', to: 'acid', factor: 0.7 }])).toEqual({
      substance: 'invented acid',
      code: 'customary',
      mgPerKgFlour: expect.closeTo(840, 9),
    }))
  test('without the factor it cannot be judged', () =>
    expect(of([])).toEqual({ substance: 'invented acid', code: 'cannot-judge', mgPerKgFlour: null }))
})

describe('in the catalogue', () => {
  const entry = dosingEntries.find(({ id }) => id === 'dosing/check-dose')!
  const run = (more: object) => (entry.run as (q: unknown) => { limit: string })({ ...entry.example, ...more })
  test('a limit left empty is asked for, never taken for ‘as much as needed’', () => {
    expect(() => run({ maxMgPerKg: undefined })).toThrow(
      expect.objectContaining({ facts: { field: 'maxMgPerKg', reason: 'not-given' } }),
    )
    expect(run({ rule: 'quantum-satis', maxMgPerKg: undefined, isChecked: true }).limit).toBe('as-needed')
  })
  test('a rule without a figure takes none', () =>
    expect(() => run({ rule: 'forbidden' })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ reason: 'rule-has-no-figure' }) }),
    ))
})
