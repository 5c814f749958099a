import { z } from 'zod'
import { DUST_CAUTIONS } from '../dosing/dust-cautions'
import { calcEntry } from '../entry'
import { blendFallingNumber } from './blend-falling-number'
import { blendToFallingNumber } from './blend-to-falling-number'
import { blendToFigure } from './blend-to-figure'
import { glutenToProtein } from './gluten-to-protein'
import { maltToFallingNumber } from './malt-to-falling-number'

const liquefaction = 'US seed-company agronomist, 2020, after USDA grain inspection'
const optionalNumber = z.optional(z.number())

export const flourEntries = [
  calcEntry({
    id: 'flour/blend-to-figure',
    input: z.strictObject({
      firstPct: z.number(),
      secondPct: z.number(),
      wantedPct: z.number(),
      basis: z.enum(['as-is', 'moisture']),
      basisMoisturePct: optionalNumber,
      firstMoisturePct: optionalNumber,
      secondMoisturePct: optionalNumber,
      massG: z.number(),
    }),
    output: z.strictObject({
      firstAtBasisPct: z.number(),
      secondAtBasisPct: z.number(),
      firstPartPct: z.number(),
      firstMassG: z.number(),
      secondMassG: z.number(),
    }),
    example: {
      firstPct: 14.1,
      secondPct: 10.2,
      wantedPct: 11.8,
      basis: 'moisture',
      basisMoisturePct: 14,
      firstMoisturePct: 13.1,
      secondMoisturePct: 14.2,
      massG: 50_000,
    },
    source: 'mass balance (alligation); common practice, no source',
    run: blendToFigure,
  }),
  calcEntry({
    id: 'flour/blend-falling-number',
    input: z.strictObject({ parts: z.array(z.strictObject({ massG: z.number(), fallingNumberS: z.number() })) }),
    output: z.strictObject({ liquefactionNumber: z.number(), fallingNumberS: z.number() }),
    example: {
      parts: [
        { massG: 30_000, fallingNumberS: 380 },
        { massG: 20_000, fallingNumberS: 240 },
      ],
    },
    source: liquefaction,
    run: blendFallingNumber,
  }),
  calcEntry({
    id: 'flour/blend-to-falling-number',
    input: z.strictObject({
      firstFallingNumberS: z.number(),
      secondFallingNumberS: z.number(),
      wantedFallingNumberS: z.number(),
      massG: z.number(),
    }),
    output: z.strictObject({
      wantedLiquefactionNumber: z.number(),
      firstPartPct: z.number(),
      secondPartPct: z.number(),
      firstMassG: z.number(),
      secondMassG: z.number(),
    }),
    example: { firstFallingNumberS: 380, secondFallingNumberS: 180, wantedFallingNumberS: 260, massG: 50_000 },
    source: liquefaction,
    run: blendToFallingNumber,
  }),
  calcEntry({
    id: 'flour/malt-to-falling-number',
    input: z.strictObject({
      fallingNumberS: z.number(),
      triedDosePctFlour: z.number(),
      triedFallingNumberS: z.number(),
      wantedFallingNumberS: z.number(),
    }),
    output: z.strictObject({
      dosePctFlour: z.number(),
      warnings: z.array(z.enum(['beyond-tried-dose', 'check-with-flour'])),
      cautions: z.array(z.enum(DUST_CAUTIONS)),
    }),
    example: { fallingNumberS: 390, triedDosePctFlour: 0.15, triedFallingNumberS: 300, wantedFallingNumberS: 270 },
    source: `${liquefaction}; proportion to the dose: common practice, no source`,
    run: (q) => ({ ...maltToFallingNumber(q), cautions: [...DUST_CAUTIONS] }),
  }),
  calcEntry({
    id: 'flour/gluten-to-protein',
    input: z.strictObject({
      flourMassG: z.number(),
      flourProteinPct: z.number(),
      glutenProteinPct: z.number(),
      wantedProteinPct: z.number(),
    }),
    output: z.strictObject({
      replacingGlutenG: z.number(),
      replacingFlourG: z.number(),
      onTopGlutenG: z.number(),
      cautions: z.array(z.enum(['takes-more-water', 'gluten-is-wheat', ...DUST_CAUTIONS])),
    }),
    example: { flourMassG: 25_000, flourProteinPct: 10.8, glutenProteinPct: 76, wantedProteinPct: 12.2 },
    source: 'mass balance; common practice, no source',
    run: (q) => {
      const { cautions, ...masses } = glutenToProtein(q)
      return { ...masses, cautions: [...cautions, ...DUST_CAUTIONS] }
    },
  }),
] as const
