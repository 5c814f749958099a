import { z } from 'zod'
import { mustBeGiven, mustBeWithin } from '../checks'
import { calcEntry } from '../entry'
import { CalcError } from '../error'
import { atFlatFields } from '../flat-fields'
import { activeMassG } from './active-mass'
import { activityProductMassG } from './activity-product-mass'
import { checkDose } from './check-dose'
import { DUST_CAUTIONS } from './dust-cautions'
import { equalActiveMassG } from './equal-active-mass'
import { productMassG } from './product-mass'
import type { ActiveStrength } from './types'
import { yeastEquivalentG } from './yeast-equivalent'
import { chainEntries } from './chain-entries'
import { limitsEntries } from './limits-entries'

const optionalNumber = z.optional(z.number())
const optionalText = z.optional(z.string())
const dust = z.array(z.enum(DUST_CAUTIONS))
const yeast = z.enum(['fresh', 'active-dry', 'instant'])

/** The one substance that a question of the catalogue is about. */
const SUBSTANCE = 'substance'

export const dosingEntries = [
  calcEntry({
    id: 'dosing/active-mass',
    input: z.strictObject({
      dose: z.number(),
      unit: z.enum(['pct-flour', 'ppm-flour', 'g-per-kg-flour']),
      flourMassG: z.number(),
    }),
    output: z.strictObject({ activeMassG: z.number() }),
    example: { dose: 60, unit: 'ppm-flour', flourMassG: 12_000 },
    source: 'definition of the units; ppm is mg per kg',
    run: (q) => ({ activeMassG: activeMassG(q) }),
  }),
  calcEntry({
    id: 'dosing/product-mass',
    input: z.strictObject({ activeMassG: z.number(), activeShare: z.number(), strengthShare: z.number() }),
    output: z.strictObject({ productMassG: z.number(), cautions: dust }),
    example: { activeMassG: 0.72, activeShare: 0.2, strengthShare: 0.9 },
    source: 'mass balance; common practice, no source',
    run: (q) => ({ productMassG: productMassG(q), cautions: [...DUST_CAUTIONS] }),
  }),
  calcEntry({
    id: 'dosing/activity-product-mass',
    input: z.strictObject({
      unitsPerKgFlour: z.number(),
      wantedMethod: z.string(),
      wantedUnit: z.string(),
      flourMassG: z.number(),
      unitsPerG: z.number(),
      productMethod: z.string(),
      productUnit: z.string(),
      strengthShare: z.number(),
    }),
    output: z.strictObject({ productMassG: z.number(), cautions: dust }),
    example: {
      unitsPerKgFlour: 5000,
      wantedMethod: 'supplier A, pH 5.5, 30 °C',
      wantedUnit: 'units',
      flourMassG: 10_000,
      unitsPerG: 20_000,
      productMethod: 'supplier A, pH 5.5, 30 °C',
      productUnit: 'units',
      strengthShare: 0.95,
    },
    source: 'mass balance; common practice, no source',
    run: ({ wantedMethod, wantedUnit, productMethod, productUnit, unitsPerG, strengthShare, ...q }) => ({
      productMassG: atFlatFields(
        (field) => (field === 'product.activity' ? 'productMethod' : field.replace('product.', '')),
        () =>
          activityProductMassG({
            ...q,
            wanted: { method: wantedMethod, unit: wantedUnit },
            product: { activity: { method: productMethod, unit: productUnit }, unitsPerG, strengthShare },
          }),
      ),
      cautions: [...DUST_CAUTIONS],
    }),
  }),
  calcEntry({
    id: 'dosing/equal-active-mass',
    input: z.strictObject({
      massG: z.number(),
      by: z.enum(['share', 'activity']),
      fromStrengthShare: z.number(),
      toStrengthShare: z.number(),
      fromActiveShare: optionalNumber,
      toActiveShare: optionalNumber,
      fromUnitsPerG: optionalNumber,
      toUnitsPerG: optionalNumber,
      fromActivity: optionalText,
      toActivity: optionalText,
    }),
    output: z.strictObject({ massG: z.number(), cautions: dust }),
    example: {
      massG: 100,
      by: 'share',
      fromActiveShare: 0.63,
      fromStrengthShare: 1,
      toActiveShare: 0.96,
      toStrengthShare: 0.9,
    },
    source: 'mass balance; common practice, no source',
    run: (q) => ({
      massG: atFlatFields(
        (field) => field.replace(/^(from|to)\.(.)/, (_, side: string, first: string) => side + first.toUpperCase()),
        () => equalActiveMassG({ massG: q.massG, from: strengthOf('from', q), to: strengthOf('to', q) }),
      ),
      cautions: [...DUST_CAUTIONS],
    }),
  }),
  calcEntry({
    id: 'dosing/check-dose',
    input: z.strictObject({
      sources: z.array(
        z.strictObject({ id: z.string(), form: z.string(), massG: z.number(), activeShare: z.number() }),
      ),
      flourMassG: z.number(),
      finishedFoodPer100Flour: optionalNumber,
      conversions: z.array(z.strictObject({ from: z.string(), to: z.string(), factor: z.number() })),
      limitForm: z.string(),
      basis: z.enum(['flour', 'finished-food']),
      rule: z.enum(['at-most', 'quantum-satis', 'forbidden']),
      maxMgPerKg: optionalNumber,
      toleranceShare: z.number(),
      countsFlourContent: z.boolean(),
      flourContentMgPerKg: optionalNumber,
      isChecked: z.boolean(),
      customaryForm: optionalText,
      minMgPerKgFlour: optionalNumber,
      maxMgPerKgFlour: optionalNumber,
    }),
    output: z.strictObject({
      limit: z.enum([
        'within-checked-limit',
        'within-unchecked-limit',
        'as-needed',
        'over-checked-limit',
        'over-unchecked-limit',
        'not-permitted',
        'not-permitted-unchecked',
        'cannot-judge',
      ]),
      mgPerKg: z.nullable(z.number()),
      missing: z.array(z.strictObject({ what: z.enum(['form-conversion', 'finished-food-mass', 'flour-content']) })),
      customary: z.nullable(z.enum(['customary', 'below-customary', 'above-customary', 'cannot-judge'])),
    }),
    example: {
      sources: [{ id: 'fruit powder', form: 'acid', massG: 10, activeShare: 0.17 }],
      flourMassG: 10_000,
      conversions: [],
      limitForm: 'acid',
      basis: 'flour',
      rule: 'at-most',
      maxMgPerKg: 200,
      toleranceShare: 0,
      countsFlourContent: false,
      isChecked: false,
      customaryForm: 'acid',
      minMgPerKgFlour: 10,
      maxMgPerKgFlour: 100,
    },
    source: 'mass balance; local rules and the competent authority decide',
    run: (q) => {
      if (q.flourContentMgPerKg !== undefined) mustBeWithin('flourContentMgPerKg', q.flourContentMgPerKg, { min: 0 })
      const found = atFlatFields(['limits[0].', 'customary[0].'], () =>
        checkDose({
          sources: q.sources.map(({ id, ...one }) => ({ lineId: id, substance: SUBSTANCE, ...one })),
          flourMassG: q.flourMassG,
          finishedFoodPer100Flour: q.finishedFoodPer100Flour ?? null,
          flourContentMgPerKg: q.flourContentMgPerKg === undefined ? {} : { [SUBSTANCE]: q.flourContentMgPerKg },
          conversions: q.conversions,
          customary: customaryOf(q),
          limits: [
            {
              id: 'limit',
              jurisdiction: '',
              food: '',
              source: '',
              basis: q.basis,
              form: q.limitForm,
              substances: [SUBSTANCE],
              isPermitted: q.rule !== 'forbidden',
              maxMgPerKg: limitOf(q),
              countsFlourContent: q.countsFlourContent,
              toleranceShare: q.toleranceShare,
              checkedOn: q.isChecked ? 'checked' : null,
            },
          ],
        }),
      )
      const limit = found.limits[0]!
      return {
        limit: limit.code,
        mgPerKg: limit.mgPerKg,
        missing: limit.missing.map((what) => ({ what })),
        customary: found.customary[0]?.code ?? null,
      }
    },
  }),
  calcEntry({
    id: 'dosing/yeast-equivalent',
    input: z.strictObject({
      massG: z.number(),
      from: yeast,
      to: yeast,
      convention: z.enum(['hamelman', 'gisslen', 'three-quarters']),
    }),
    output: z.strictObject({ massG: z.number() }),
    example: { massG: 30, from: 'fresh', to: 'instant', convention: 'hamelman' },
    source:
      'J. Hamelman, Bread, 2004; W. Gisslen, Professional Cooking, as reproduced; three quarters: common practice, no source',
    run: (q) => ({ massG: yeastEquivalentG(q) }),
  }),
  ...chainEntries,
  ...limitsEntries,
] as const

type FlatStrengths = { by: 'share' | 'activity'; fromStrengthShare: number; toStrengthShare: number } & {
  [Field in `${'from' | 'to'}${'ActiveShare' | 'UnitsPerG'}`]?: number | undefined
} & { [Field in `${'from' | 'to'}Activity`]?: string | undefined }

function strengthOf(side: 'from' | 'to', q: FlatStrengths): ActiveStrength {
  const strengthShare = q[`${side}StrengthShare`]
  if (q.by === 'share') {
    return {
      by: 'share',
      substance: SUBSTANCE,
      activeShare: mustBeGiven(`${side}ActiveShare`, q[`${side}ActiveShare`]),
      strengthShare,
    }
  }
  const activity = { method: mustBeGiven(`${side}Activity`, q[`${side}Activity`]), unit: 'units' }
  return { by: 'activity', activity, unitsPerG: mustBeGiven(`${side}UnitsPerG`, q[`${side}UnitsPerG`]), strengthShare }
}

/** The figure of a limit: given where the rule has one, and nowhere else. */
function limitOf(q: {
  rule: 'at-most' | 'quantum-satis' | 'forbidden'
  maxMgPerKg?: number | undefined
}): number | null {
  if (q.rule === 'at-most') return mustBeGiven('maxMgPerKg', q.maxMgPerKg)
  if (q.maxMgPerKg !== undefined)
    throw new CalcError('not-possible', { field: 'maxMgPerKg', value: q.maxMgPerKg, reason: 'rule-has-no-figure' })
  return null
}

/** The customary range, when one is given; then its form and both its ends are. */
function customaryOf(q: {
  customaryForm?: string | undefined
  minMgPerKgFlour?: number | undefined
  maxMgPerKgFlour?: number | undefined
}) {
  if (q.minMgPerKgFlour === undefined && q.maxMgPerKgFlour === undefined) return []
  return [
    {
      substance: SUBSTANCE,
      source: '',
      form: mustBeGiven('customaryForm', q.customaryForm),
      minMgPerKgFlour: mustBeGiven('minMgPerKgFlour', q.minMgPerKgFlour),
      maxMgPerKgFlour: mustBeGiven('maxMgPerKgFlour', q.maxMgPerKgFlour),
    },
  ]
}
