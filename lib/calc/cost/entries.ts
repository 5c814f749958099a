import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { batchCost } from './batch-cost'
import { breakEvenPrice } from './break-even-price'
import { buyingEntries } from './buying-entries'
import { costDifference } from './cost-difference'
import { decimalText } from './decimal-text'
import { grossMarginPct } from './gross-margin'
import { mustBeDecimal } from './must-be-decimal'
import { priceOnDay } from './price-on-day'
import { unitCosts } from './unit-costs'
import { gainEntries } from './gain-entries'

/** Money goes in and comes out as a decimal in text, in minor units of one currency: '107.71875' cents. */
const minor = z.string()
const day = z.string()
const price = { validFrom: day, perKgMinor: minor, currency: z.string() }

/** Below any amount that can be written: a gain may be a loss. */
const ANY = -1e15

export const costEntries = [
  calcEntry({
    id: 'cost/price-on-day',
    input: z.strictObject({ prices: z.array(z.strictObject(price)), day }),
    output: z.strictObject({
      validFrom: z.nullable(day),
      perKgMinor: z.nullable(minor),
      currency: z.nullable(z.string()),
    }),
    example: {
      prices: [
        { validFrom: '2031-01-01', perKgMinor: '82', currency: 'EUR' },
        { validFrom: '2031-04-01', perKgMinor: '89.5', currency: 'EUR' },
      ],
      day: '2031-03-31',
    },
    source: 'common practice, no source',
    run: (q) => priceOnDay(q) ?? { validFrom: null, perKgMinor: null, currency: null },
  }),
  calcEntry({
    id: 'cost/batch-cost',
    input: z.strictObject({
      lines: z.array(z.strictObject({ name: z.string(), massG: z.number() })),
      prices: z.array(z.strictObject({ name: z.string(), ...price })),
      day,
    }),
    output: z.strictObject({
      currency: z.string(),
      totalMinor: minor,
      lines: z.array(z.strictObject({ name: z.string(), perKgMinor: minor, validFrom: day, costMinor: minor })),
    }),
    example: {
      lines: [
        { name: 'flour', massG: 10_000 },
        { name: 'malt', massG: 100 },
      ],
      prices: [
        { name: 'flour', validFrom: '2031-01-01', perKgMinor: '82', currency: 'EUR' },
        { name: 'malt', validFrom: '2031-01-01', perKgMinor: '415.5', currency: 'EUR' },
      ],
      day: '2031-02-14',
    },
    source: 'definition; common practice, no source',
    run: (q) => {
      const lines = q.lines.map((line) => ({
        ...line,
        lineId: line.name,
        prices: q.prices.filter(({ name }) => name === line.name),
      }))
      // Prices are one list here and not one a line, so a fault of theirs is at the list.
      const cost = atFlatFields(
        (field) => field.replace(/^(lines\[\d+\]\.)?prices.*$/, 'prices'),
        () => batchCost({ lines, day: q.day }),
      )
      return {
        currency: cost.currency,
        totalMinor: decimalText(cost.totalMinor),
        lines: cost.lines.map(({ lineId, validFrom, perKgMinor, costMinor }) => ({
          name: lineId,
          validFrom,
          perKgMinor: decimalText(perKgMinor),
          costMinor: decimalText(costMinor),
        })),
      }
    },
  }),
  calcEntry({
    id: 'cost/unit-costs',
    input: z.strictObject({
      totalMinor: minor,
      plannedPieces: z.number(),
      goodPieces: z.number(),
      goodMassG: z.number(),
      goodVolumeMl: z.number(),
    }),
    output: z.strictObject({
      perPlannedPieceMinor: minor,
      perGoodPieceMinor: minor,
      perKgMinor: minor,
      perLitreMinor: minor,
    }),
    example: { totalMinor: '6240', plannedPieces: 60, goodPieces: 57, goodMassG: 28_500, goodVolumeMl: 114_000 },
    source: 'W. Gisslen, Professional Baking: divide by units sold, not by formula yield',
    run: ({ totalMinor, ...q }) => {
      const costs = unitCosts({ ...q, totalMinor: mustBeDecimal('totalMinor', totalMinor) })
      return {
        perPlannedPieceMinor: decimalText(costs.perPlannedPieceMinor),
        perGoodPieceMinor: decimalText(costs.perGoodPieceMinor),
        perKgMinor: decimalText(costs.perKgMinor),
        perLitreMinor: decimalText(costs.perLitreMinor),
      }
    },
  }),
  calcEntry({
    id: 'cost/cost-difference',
    input: z.strictObject({ controlMinor: minor, armMinor: minor }),
    output: z.strictObject({ differenceMinor: minor, differencePct: z.nullable(z.number()) }),
    example: { controlMinor: '104', armMinor: '107.5' },
    source: 'definition; common practice, no source',
    run: (q) => {
      const { differenceMinor, differencePct } = costDifference({
        controlMinor: mustBeDecimal('controlMinor', q.controlMinor),
        armMinor: mustBeDecimal('armMinor', q.armMinor),
      })
      return { differenceMinor: decimalText(differenceMinor), differencePct: differencePct?.toNumber() ?? null }
    },
  }),
  calcEntry({
    id: 'cost/gross-margin',
    input: z.strictObject({ priceMinor: minor, costMinor: minor }),
    output: z.strictObject({ marginPct: z.number() }),
    example: { priceMinor: '420', costMinor: '109.47' },
    source: 'South African milling company, glossary of bakery terms',
    run: (q) => ({
      marginPct: grossMarginPct({
        priceMinor: mustBeDecimal('priceMinor', q.priceMinor),
        costMinor: mustBeDecimal('costMinor', q.costMinor),
      }).toNumber(),
    }),
  }),
  calcEntry({
    id: 'cost/break-even-price',
    input: z.strictObject({
      controlPerGoodPieceMinor: minor,
      gainPerGoodPieceMinor: minor,
      armRestMinor: minor,
      armGoodPieces: z.number(),
      addedMassG: z.number(),
    }),
    output: z.strictObject({
      outcome: z.enum(['price', 'never']),
      perKgMinor: z.nullable(minor),
      shortMinor: z.nullable(minor),
    }),
    example: {
      controlPerGoodPieceMinor: '104',
      gainPerGoodPieceMinor: '3',
      armRestMinor: '6180',
      armGoodPieces: 59,
      addedMassG: 120,
    },
    source: 'definition of break-even; common practice, no source',
    run: (q) => {
      const found = breakEvenPrice({
        controlPerGoodPieceMinor: mustBeDecimal('controlPerGoodPieceMinor', q.controlPerGoodPieceMinor),
        gainPerGoodPieceMinor: mustBeDecimal('gainPerGoodPieceMinor', q.gainPerGoodPieceMinor, ANY),
        armRestMinor: mustBeDecimal('armRestMinor', q.armRestMinor),
        armGoodPieces: q.armGoodPieces,
        addedMassG: q.addedMassG,
      })
      return {
        outcome: found.outcome,
        perKgMinor: found.outcome === 'price' ? decimalText(found.perKgMinor) : null,
        shortMinor: found.outcome === 'never' ? decimalText(found.shortMinor) : null,
      }
    },
  }),
  ...gainEntries,
  ...buyingEntries,
] as const
