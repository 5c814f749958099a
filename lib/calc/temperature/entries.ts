import { z } from 'zod'
import { mustBeGiven } from '../checks'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { statedComposition } from '../formula/stated-composition'
import { TAP_BOUNDS_C } from './constants'
import { doughHeatWarnings } from './dough-heat-warnings'
import { frictionFactor } from './friction-factor'
import { frictionOfBatch } from './friction-of-batch'
import { iceMassG } from './ice-mass'
import { icedWaterTemp } from './iced-water-temp'
import { mustBeKitchenTemp } from './must-be-kitchen-temp'
import { requiredWaterTemp } from './required-water-temp'
import { iceConstantFields, severalDoughsEntries } from './several-doughs-entries'
import { specificHeatJPerGK } from './specific-heat'
import { statedIceConstants } from './stated-ice-constants'
import { differenceFToC } from './temperature-difference'
import { temperatureReading, type TemperatureUnit } from './temperature-reading'
import { waterAdvice } from './water-advice'
import { waterSource } from './water-source'
import { waterTempByFactor } from './water-temp-by-factor'

const optionalNumber = z.optional(z.number())
const convention = z.enum(['replacing', 'adding'])
const temperaturesIn = z.enum(['celsius', 'fahrenheit'])
const waterWarning = z.enum(['hotter-than-boiling', 'too-hot-for-yeast', 'use-ice', 'much-ice', 'colder-than-all-ice'])
const doughHeatWarning = z.enum(['friction-below-zero', 'looks-like-fahrenheit'])
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

const inC = (reading: number, unit: TemperatureUnit) => temperatureReading({ reading, unit }).readingTempC

/** A difference in both units, without the 32 of a reading. */
const factorIn = (factor: number, unit: TemperatureUnit) =>
  unit === 'celsius'
    ? { factorDifferenceC: factor, factorDifferenceF: (factor * 9) / 5 }
    : { factorDifferenceC: differenceFToC(factor), factorDifferenceF: factor }

/** The bowl, when its heat counts: then both its figures are needed. */
function bowlOf(q: { bowlHeatCapacityJPerK?: number | undefined; bowlTempC?: number | undefined }) {
  if (q.bowlHeatCapacityJPerK === undefined && q.bowlTempC === undefined) return null
  return {
    heatCapacityJPerK: mustBeGiven('bowlHeatCapacityJPerK', q.bowlHeatCapacityJPerK),
    tempC: mustBeGiven('bowlTempC', q.bowlTempC),
  }
}

const flatField = (field: string) =>
  field
    .replace('finalTempC', 'wantedTempC')
    .replace('bowl.heatCapacity', 'bowlHeatCapacity')
    .replace('bowl.temp', 'bowlTemp')
    .replace('friction.', '')
    .replace('composition.', '')

export const temperatureEntries = [
  calcEntry({
    id: 'temperature/required-water-temp',
    input: z.strictObject({
      ...doughHeat,
      frictionBy: z.enum(['rise', 'energy']),
      riseC: optionalNumber,
      phases: z.optional(z.array(z.strictObject({ joulePerKgMin: z.number(), minutes: z.number() }))),
      tapTempC: optionalNumber,
    }),
    output: z.strictObject({
      waterTempC: z.number(),
      iceMassG: z.nullable(z.number()),
      frictionJ: z.number(),
      heatCapacityJPerK: z.number(),
      warnings: z.array(z.union([waterWarning, doughHeatWarning])),
    }),
    example: {
      doughTempC: 26,
      parts: doughParts,
      waterMassG: 620,
      roomHeatJ: 0,
      frictionBy: 'rise',
      riseC: 6,
      tapTempC: 21,
    },
    source: 'heat balance; specific heats of Y. Choi and M. R. Okos, 1986',
    run: ({ frictionBy, riseC, phases, tapTempC = null, ...q }) => {
      const found = atFlatFields(flatField, () =>
        requiredWaterTemp({
          ...q,
          bowl: bowlOf(q),
          friction:
            frictionBy === 'rise'
              ? { by: 'rise', riseC: mustBeGiven('riseC', riseC) }
              : { by: 'energy', phases: mustBeGiven('phases', phases) },
        }),
      )
      const { iceMassG, warnings } = atFlatFields({ waterTempC: 'doughTempC' }, () =>
        waterAdvice({ waterTempC: found.waterTempC, waterMassG: q.waterMassG, tapTempC }),
      )
      const heatWarnings = doughHeatWarnings({
        friction: found.frictionJ,
        partTempsC: q.parts.map(({ tempC }) => tempC),
      })
      return { ...found, iceMassG, warnings: [...warnings, ...heatWarnings] }
    },
  }),
  calcEntry({
    id: 'temperature/water-temp-by-factor',
    input: z.strictObject({
      temperaturesIn,
      wantedTemp: z.number(),
      roomTemp: z.number(),
      flourTemp: z.number(),
      preFermentTemp: optionalNumber,
      frictionFactor: z.number(),
      waterMassG: optionalNumber,
      tapTemp: optionalNumber,
    }),
    output: z.strictObject({
      waterTempC: z.number(),
      waterTempF: z.number(),
      iceMassG: z.nullable(z.number()),
      warnings: z.array(waterWarning),
    }),
    example: {
      temperaturesIn: 'celsius',
      wantedTemp: 26,
      roomTemp: 23,
      flourTemp: 21,
      frictionFactor: 14,
      waterMassG: 6200,
      tapTemp: 22,
    },
    source: 'US pizza trade magazine, June 2018; with a pre-ferment J. Hamelman, Bread, 2004',
    run: ({ temperaturesIn: unit, preFermentTemp = null, waterMassG = null, tapTemp, ...q }) => {
      const water = temperatureReading({ reading: waterTempByFactor({ ...q, preFermentTemp, unit }), unit })
      const tapTempC =
        tapTemp === undefined ? null : inC(mustBeKitchenTemp('tapTemp', tapTemp, { unit, boundsC: TAP_BOUNDS_C }), unit)
      return {
        waterTempC: water.readingTempC,
        waterTempF: water.readingTempF,
        ...waterAdvice({ waterTempC: water.readingTempC, waterMassG, tapTempC }),
      }
    },
  }),
  calcEntry({
    id: 'temperature/friction-factor',
    input: z.strictObject({
      temperaturesIn,
      actualTemp: z.number(),
      roomTemp: z.number(),
      flourTemp: z.number(),
      waterTemp: z.number(),
      preFermentTemp: optionalNumber,
    }),
    output: z.strictObject({ factorDifferenceC: z.number(), factorDifferenceF: z.number() }),
    example: { temperaturesIn: 'celsius', actualTemp: 26.5, roomTemp: 23, flourTemp: 21, waterTemp: 20 },
    source: 'US pizza trade magazine, spring 2003',
    run: ({ temperaturesIn: unit, preFermentTemp = null, ...q }) =>
      factorIn(frictionFactor({ ...q, preFermentTemp, unit }), unit),
  }),
  calcEntry({
    id: 'temperature/friction-of-batch',
    input: z.strictObject({ ...doughHeat, waterTempC: z.number(), mixingMinutes: z.number() }),
    output: z.strictObject({
      frictionJ: z.number(),
      riseC: z.number(),
      joulePerKgMin: z.number(),
      warnings: z.array(doughHeatWarning),
    }),
    example: { doughTempC: 26, parts: doughParts, waterMassG: 620, waterTempC: 19, roomHeatJ: 0, mixingMinutes: 9 },
    source: 'heat balance',
    run: (q) => {
      const found = atFlatFields(flatField, () => frictionOfBatch({ ...q, bowl: bowlOf(q) }))
      return {
        ...found,
        warnings: doughHeatWarnings({ friction: found.frictionJ, partTempsC: q.parts.map(({ tempC }) => tempC) }),
      }
    },
  }),
  calcEntry({
    id: 'temperature/ice-mass',
    input: z.strictObject({
      waterMassG: z.number(),
      tapTempC: z.number(),
      wantedTempC: z.number(),
      iceTempC: z.number(),
      convention,
      ...iceConstantFields,
    }),
    output: z.strictObject({ iceMassG: z.number() }),
    example: { waterMassG: 8000, tapTempC: 19, wantedTempC: 8, iceTempC: -6, convention: 'replacing' },
    source: "heat balance; the trade rule's 112 in °F is 144 − 32, common practice, no source",
    run: (q) => ({ iceMassG: atFlatFields(flatField, () => iceMassG({ ...q, constants: statedIceConstants(q) })) }),
  }),
  calcEntry({
    id: 'temperature/iced-water-temp',
    input: z.strictObject({
      waterMassG: z.number(),
      tapTempC: z.number(),
      iceMassG: z.number(),
      iceTempC: z.number(),
      ...iceConstantFields,
    }),
    output: z.strictObject({ tempC: z.number(), iceLeftG: z.number(), warnings: z.array(z.enum(['ice-left'])) }),
    example: { waterMassG: 7000, tapTempC: 19, iceMassG: 1000, iceTempC: 0 },
    source: 'heat balance',
    run: (q) => {
      const found = icedWaterTemp({ ...q, constants: statedIceConstants(q) })
      return { ...found, warnings: found.iceLeftG > 0 ? ['ice-left' as const] : [] }
    },
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
      ...iceConstantFields,
    }),
    output: z.strictObject({
      outcome: z.enum(['mix', 'ice', 'not-possible']),
      coldMassG: z.nullable(z.number()),
      hotMassG: z.nullable(z.number()),
      iceMassG: z.nullable(z.number()),
      reason: z.nullable(z.enum(['colder-than-all-ice', 'hotter-than-allowed', 'too-much-ice', 'never-melts'])),
      reachableTempC: z.nullable(z.number()),
      warnings: z.array(waterWarning),
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
      const { outcome, ...found } = waterSource({ ...q, constants: statedIceConstants(q) })
      const none = { coldMassG: null, hotMassG: null, iceMassG: null, reason: null, reachableTempC: null }
      const { warnings } =
        outcome === 'mix'
          ? waterAdvice({ waterTempC: q.wantedTempC, waterMassG: null, tapTempC: null })
          : { warnings: [] }
      return { outcome, ...none, ...found, warnings }
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
      specificHeatJPerGK: atFlatFields(flatField, () =>
        specificHeatJPerGK({ composition: statedComposition(parts), tempC }),
      ),
    }),
  }),
  calcEntry({
    id: 'temperature/temperature-difference',
    input: z.strictObject({ readingDifferenceF: z.number() }),
    output: z.strictObject({ readingDifferenceC: z.number() }),
    example: { readingDifferenceF: 26 },
    source: 'a difference of temperature changes by 5/9, without the 32 of a reading',
    run: ({ readingDifferenceF }) => ({
      readingDifferenceC: atFlatFields({ differenceF: 'readingDifferenceF' }, () => differenceFToC(readingDifferenceF)),
    }),
  }),
  calcEntry({
    id: 'temperature/temperature-reading',
    input: z.strictObject({ temperaturesIn, reading: z.number() }),
    output: z.strictObject({ readingTempC: z.number(), readingTempF: z.number() }),
    example: { temperaturesIn: 'fahrenheit', reading: 78 },
    source: 'NIST, conversion of temperatures: t/°C = (t/°F − 32)/1.8',
    run: ({ temperaturesIn: unit, reading }) => temperatureReading({ reading, unit }),
  }),
  ...severalDoughsEntries,
] as const
