import { z } from 'zod'
import { mustBeGiven } from '../checks'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { statedComposition } from '../formula/stated-composition'
import { frictionFactor } from './friction-factor'
import { frictionOfBatch } from './friction-of-batch'
import { ICE_CONSTANTS } from './ice-heat'
import { iceMassG } from './ice-mass'
import { icedWaterTemp } from './iced-water-temp'
import { requiredWaterTemp } from './required-water-temp'
import { specificHeatJPerGK } from './specific-heat'
import { differenceFToC } from './temperature-difference'
import { waterSource } from './water-source'
import { waterTempByFactor } from './water-temp-by-factor'
import { severalDoughsEntries } from './several-doughs-entries'

const optionalNumber = z.optional(z.number())
const convention = z.enum(['replacing', 'adding'])
const doughHeat = {
  doughTempC: z.number(),
  parts: z.array(z.strictObject({ massG: z.number(), tempC: z.number(), specificHeatJPerGK: z.number() })),
  waterMassG: z.number(),
  roomHeatJ: z.number(),
  bowlHeatCapacityJPerK: optionalNumber,
  bowlTempC: optionalNumber,
}
const doughParts = [
  { massG: 1000, tempC: 21, specificHeatJPerGK: 1.9 },
  { massG: 20, tempC: 21, specificHeatJPerGK: 1.1 },
]

/** The bowl, when its heat counts: then both its figures are needed. */
function bowlOf(q: { bowlHeatCapacityJPerK?: number | undefined; bowlTempC?: number | undefined }) {
  if (q.bowlHeatCapacityJPerK === undefined && q.bowlTempC === undefined) return null
  return {
    heatCapacityJPerK: mustBeGiven('bowlHeatCapacityJPerK', q.bowlHeatCapacityJPerK),
    tempC: mustBeGiven('bowlTempC', q.bowlTempC),
  }
}

const flatField = (field: string) =>
  field.replace('finalTempC', 'wantedTempC').replace('bowl.heatCapacity', 'bowlHeatCapacity').replace('bowl.temp', 'bowlTemp').replace('friction.', '').replace('composition.', '')

export const temperatureEntries = [
  calcEntry({
    id: 'temperature/required-water-temp',
    input: z.strictObject({
      ...doughHeat,
      frictionBy: z.enum(['rise', 'energy']),
      riseC: optionalNumber,
      phases: z.optional(z.array(z.strictObject({ joulePerKgMin: z.number(), minutes: z.number() }))),
    }),
    output: z.strictObject({ waterTempC: z.number(), frictionJ: z.number(), heatCapacityJPerK: z.number() }),
    example: { doughTempC: 26, parts: doughParts, waterMassG: 620, roomHeatJ: 0, frictionBy: 'rise', riseC: 6 },
    source: 'heat balance; specific heats of Y. Choi and M. R. Okos, 1986',
    run: ({ frictionBy, riseC, phases, ...q }) =>
      atFlatFields(flatField, () =>
        requiredWaterTemp({
          ...q,
          bowl: bowlOf(q),
          friction:
            frictionBy === 'rise'
              ? { by: 'rise', riseC: mustBeGiven('riseC', riseC) }
              : { by: 'energy', phases: mustBeGiven('phases', phases) },
        }),
      ),
  }),
  calcEntry({
    id: 'temperature/water-temp-by-factor',
    input: z.strictObject({
      wantedTemp: z.number(),
      roomTemp: z.number(),
      flourTemp: z.number(),
      preFermentTemp: optionalNumber,
      frictionFactor: z.number(),
    }),
    output: z.strictObject({ waterTemp: z.number() }),
    example: { wantedTemp: 26, roomTemp: 23, flourTemp: 21, frictionFactor: 14 },
    source: 'US pizza trade magazine, June 2018; with a pre-ferment J. Hamelman, Bread, 2004',
    run: ({ preFermentTemp = null, ...q }) => ({ waterTemp: waterTempByFactor({ ...q, preFermentTemp }) }),
  }),
  calcEntry({
    id: 'temperature/friction-factor',
    input: z.strictObject({
      actualTemp: z.number(),
      roomTemp: z.number(),
      flourTemp: z.number(),
      waterTemp: z.number(),
      preFermentTemp: optionalNumber,
    }),
    output: z.strictObject({ frictionFactor: z.number() }),
    example: { actualTemp: 26.5, roomTemp: 23, flourTemp: 21, waterTemp: 20 },
    source: 'US pizza trade magazine, spring 2003',
    run: ({ preFermentTemp = null, ...q }) => ({ frictionFactor: frictionFactor({ ...q, preFermentTemp }) }),
  }),
  calcEntry({
    id: 'temperature/friction-of-batch',
    input: z.strictObject({ ...doughHeat, waterTempC: z.number(), mixingMinutes: z.number() }),
    output: z.strictObject({ frictionJ: z.number(), riseC: z.number(), joulePerKgMin: z.number() }),
    example: { doughTempC: 26, parts: doughParts, waterMassG: 620, waterTempC: 19, roomHeatJ: 0, mixingMinutes: 9 },
    source: 'heat balance',
    run: (q) => atFlatFields(flatField, () => frictionOfBatch({ ...q, bowl: bowlOf(q) })),
  }),
  calcEntry({
    id: 'temperature/ice-mass',
    input: z.strictObject({
      waterMassG: z.number(),
      tapTempC: z.number(),
      wantedTempC: z.number(),
      iceTempC: z.number(),
      convention,
    }),
    output: z.strictObject({ iceMassG: z.number() }),
    example: { waterMassG: 8000, tapTempC: 19, wantedTempC: 8, iceTempC: -6, convention: 'replacing' },
    source: "heat balance; the trade rule's 112 in °F is 144 − 32, common practice, no source",
    run: (q) => ({ iceMassG: atFlatFields(flatField, () => iceMassG({ ...q, constants: ICE_CONSTANTS })) }),
  }),
  calcEntry({
    id: 'temperature/iced-water-temp',
    input: z.strictObject({ waterMassG: z.number(), tapTempC: z.number(), iceMassG: z.number(), iceTempC: z.number() }),
    output: z.strictObject({ tempC: z.number(), iceLeftG: z.number() }),
    example: { waterMassG: 7000, tapTempC: 19, iceMassG: 1000, iceTempC: 0 },
    source: 'heat balance',
    run: (q) => icedWaterTemp({ ...q, constants: ICE_CONSTANTS }),
  }),
  calcEntry({
    id: 'temperature/water-source',
    input: z.strictObject({
      waterMassG: z.number(),
      wantedTempC: z.number(),
      coldTempC: z.number(),
      hotTempC: z.number(),
      mostTempC: z.number(),
      iceTempC: z.number(),
      convention,
      mostIceShare: z.number(),
    }),
    output: z.strictObject({
      outcome: z.enum(['mix', 'ice', 'not-possible']),
      coldMassG: z.nullable(z.number()),
      hotMassG: z.nullable(z.number()),
      iceMassG: z.nullable(z.number()),
      reason: z.nullable(z.enum(['colder-than-all-ice', 'hotter-than-allowed', 'too-much-ice'])),
      reachableTempC: z.nullable(z.number()),
    }),
    example: {
      waterMassG: 6200,
      wantedTempC: 11,
      coldTempC: 15,
      hotTempC: 55,
      mostTempC: 45,
      iceTempC: 0,
      convention: 'replacing',
      mostIceShare: 0.5,
    },
    source: 'heat balance',
    run: (q) => {
      const { outcome, ...found } = waterSource({ ...q, constants: ICE_CONSTANTS })
      const none = { coldMassG: null, hotMassG: null, iceMassG: null, reason: null, reachableTempC: null }
      return { outcome, ...none, ...found }
    },
  }),
  calcEntry({
    id: 'temperature/specific-heat',
    input: z.strictObject({
      waterPct: z.number(),
      proteinPct: z.number(),
      fatPct: z.number(),
      carbohydratePct: z.number(),
      fibrePct: optionalNumber,
      ashPct: z.number(),
      tempC: z.number(),
    }),
    output: z.strictObject({ specificHeatJPerGK: z.number() }),
    example: { waterPct: 14, proteinPct: 12, fatPct: 1.5, carbohydratePct: 72, fibrePct: 3, ashPct: 0.5, tempC: 20 },
    source: 'Y. Choi and M. R. Okos, Effects of temperature and composition on the thermal properties of foods, 1986',
    run: ({ tempC, ...parts }) => ({
      specificHeatJPerGK: atFlatFields(flatField, () => specificHeatJPerGK({ composition: statedComposition(parts), tempC })),
    }),
  }),
  calcEntry({
    id: 'temperature/temperature-difference',
    input: z.strictObject({ differenceF: z.number() }),
    output: z.strictObject({ differenceC: z.number() }),
    example: { differenceF: 26 },
    source: 'a difference of temperature changes by 5/9, without the 32 of a reading',
    run: ({ differenceF }) => ({ differenceC: differenceFToC(differenceF) }),
  }),
  ...severalDoughsEntries,
] as const
