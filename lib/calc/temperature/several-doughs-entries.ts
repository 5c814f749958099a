import { z } from 'zod'
import { calcEntry } from '../entry'
import { HOTTEST_FOR_YEAST_C } from './constants'
import { atFlatFields } from '../flat-fields'
import { correctFrictionJPerKg } from './correct-friction'
import { doughHeatWarnings } from './dough-heat-warnings'
import { learnFriction } from './learn-friction'
import { statedIceConstants } from './stated-ice-constants'
import { waterForArms } from './water-for-arms'

const optionalNumber = z.optional(z.number())

/** Constants that a table of ice was worked out with, where it had others than ours. */
export const iceConstantFields = {
  latentHeatJPerG: optionalNumber,
  waterSpecificHeatJPerGK: optionalNumber,
  iceSpecificHeatJPerGK: optionalNumber,
}

export const severalDoughsEntries = [
  calcEntry({
    id: 'temperature/learn-friction',
    input: z.strictObject({
      batches: z.array(
        z.strictObject({
          batch: z.string(),
          doughMassG: z.number(),
          frictionJ: z.number(),
          firstSpeedMin: z.number(),
          secondSpeedMin: z.number(),
        }),
      ),
      plannedDoughMassG: z.number(),
      plannedFirstSpeedMin: z.number(),
      plannedSecondSpeedMin: z.number(),
    }),
    output: z.strictObject({
      firstSpeedJPerKgMin: z.nullable(z.number()),
      secondSpeedJPerKgMin: z.nullable(z.number()),
      frictionJPerKg: z.number(),
      batches: z.number(),
      spreadJPerKg: z.number(),
      setAside: z.array(z.strictObject({ batch: z.string(), weightShare: z.number(), offByJPerKg: z.number() })),
      leastDoughMassG: z.number(),
      mostDoughMassG: z.number(),
      isGuess: z.boolean(),
      reasons: z.array(
        z.enum([
          'few-batches',
          'outside-dough-sizes',
          'longer-than-learned',
          'speeds-not-told-apart',
          'takes-heat-out',
        ]),
      ),
    }),
    example: {
      batches: [
        { batch: 'Mon 1', doughMassG: 12_000, frictionJ: 34_100, firstSpeedMin: 4, secondSpeedMin: 5 },
        { batch: 'Mon 2', doughMassG: 14_000, frictionJ: 52_300, firstSpeedMin: 4, secondSpeedMin: 7 },
        { batch: 'Tue 1', doughMassG: 12_000, frictionJ: 36_600, firstSpeedMin: 3, secondSpeedMin: 6 },
        { batch: 'Tue 2', doughMassG: 13_000, frictionJ: 90_500, firstSpeedMin: 5, secondSpeedMin: 5 },
        { batch: 'Wed 1', doughMassG: 15_000, frictionJ: 42_900, firstSpeedMin: 5, secondSpeedMin: 5 },
        { batch: 'Wed 2', doughMassG: 12_000, frictionJ: 45_800, firstSpeedMin: 3, secondSpeedMin: 8 },
      ],
      plannedDoughMassG: 13_000,
      plannedFirstSpeedMin: 4,
      plannedSecondSpeedMin: 6,
    },
    source: 'heat balance; P. J. Huber, Robust statistics, 1981, chapter 7',
    run: (q) => atFlatFields({ x: 'batches', y: 'batches' }, () => learnFriction(q)),
  }),
  calcEntry({
    id: 'temperature/correct-friction',
    input: z.strictObject({
      usedFrictionJPerKg: z.number(),
      heatCapacityJPerK: z.number(),
      doughMassG: z.number(),
      wantedDoughTempC: z.number(),
      actualDoughTempC: z.number(),
    }),
    output: z.strictObject({
      frictionJPerKg: z.number(),
      warnings: z.array(z.enum(['friction-below-zero', 'looks-like-fahrenheit'])),
    }),
    example: {
      usedFrictionJPerKg: 3200,
      heatCapacityJPerK: 36_000,
      doughMassG: 13_000,
      wantedDoughTempC: 26,
      actualDoughTempC: 26.8,
    },
    source: 'heat balance; the rule is our own',
    run: (q) => {
      const frictionJPerKg = correctFrictionJPerKg(q)
      return { frictionJPerKg, warnings: doughHeatWarnings({ friction: frictionJPerKg, partTempsC: [] }) }
    },
  }),
  calcEntry({
    id: 'temperature/water-for-arms',
    input: z.strictObject({
      wantedDoughTempC: z.number(),
      frictionJPerKg: z.number(),
      arms: z.array(
        z.strictObject({
          arm: z.string(),
          waterMassG: z.number(),
          restMassG: z.number(),
          restTempC: z.number(),
          restSpecificHeatJPerGK: z.number(),
        }),
      ),
      coldTempC: z.number(),
      hotTempC: z.number(),
      mostTempC: z.number(),
      iceTempC: z.number(),
      mostIceShare: z.number(),
      ...iceConstantFields,
    }),
    output: z.strictObject({
      arms: z.array(
        z.strictObject({
          arm: z.string(),
          waterTempC: z.number(),
          outcome: z.enum(['mix', 'ice', 'not-possible']),
          coldMassG: z.nullable(z.number()),
          hotMassG: z.nullable(z.number()),
          iceMassG: z.nullable(z.number()),
          coldestDoughTempC: z.number(),
          warmestDoughTempC: z.number(),
        }),
      ),
      canAll: z.boolean(),
      commonDoughTempC: z.nullable(z.number()),
      warnings: z.array(z.enum(['too-hot-for-yeast', 'friction-below-zero', 'looks-like-fahrenheit'])),
    }),
    example: {
      wantedDoughTempC: 26,
      frictionJPerKg: 9000,
      arms: [
        { arm: 'control', waterMassG: 6500, restMassG: 10_300, restTempC: 22, restSpecificHeatJPerGK: 1.9 },
        { arm: 'B', waterMassG: 6350, restMassG: 10_450, restTempC: 22, restSpecificHeatJPerGK: 1.95 },
      ],
      coldTempC: 15,
      hotTempC: 55,
      mostTempC: 40,
      iceTempC: 0,
      mostIceShare: 0.5,
    },
    source: 'heat balance',
    run: (q) => {
      const found = waterForArms({ ...q, constants: statedIceConstants(q) })
      const isTooHot = found.arms.some(
        ({ outcome, waterTempC }) => outcome === 'mix' && waterTempC > HOTTEST_FOR_YEAST_C,
      )
      const heatWarnings = doughHeatWarnings({
        friction: q.frictionJPerKg,
        partTempsC: q.arms.map(({ restTempC }) => restTempC),
      })
      return { ...found, warnings: [...(isTooHot ? (['too-hot-for-yeast'] as const) : []), ...heatWarnings] }
    },
  }),
] as const
