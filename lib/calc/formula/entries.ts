import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { atMoistureBasisPct } from './at-moisture-basis'
import { compositionWarnings } from './composition-warnings'
import { correctForMoisture } from './correct-for-moisture'
import { doughMassForPiecesG } from './dough-mass-for-pieces'
import { DOUGH_WATER_WARNINGS } from './dough-water-warnings'
import { doughYield } from './dough-yield'
import { equalDryFlourMassG } from './equal-dry-flour-mass'
import { farinographAbsorption } from './farinograph-absorption'
import { finalDoughView } from './final-dough-view'
import { flatFormula } from './flat-formula'
import { flatScaleTarget } from './flat-scale-target'
import { formulaTotals } from './formula-totals'
import { hydration } from './hydration'
import { massesFromPercentages } from './masses-from-percentages'
import { nutrientTotals } from './nutrient-totals'
import { roundToResolutions } from './round-to-resolutions'
import { statedComposition } from './stated-composition'

const optionalNumber = z.optional(z.number())
const stageKind = z.enum(['final-dough', 'pre-ferment', 'scald', 'soaker'])
const kind = z.enum(['flour', 'water', 'yeast', 'salt', 'fat', 'sugar', 'dairy', 'egg', 'improver', 'other'])
const warning = z.enum([
  'not-closed',
  'looks-like-share',
  'sugars-above-carbohydrate',
  'fibre-above-carbohydrate',
  'not-stated',
])
const waterWarnings = z.array(z.enum(DOUGH_WATER_WARNINGS))
const lossesOn = z.enum(['dough', 'baked'])
const lossesCombine = z.enum(['added', 'compounded'])
const composition = {
  ...{ waterPct: optionalNumber, proteinPct: optionalNumber, fatPct: optionalNumber },
  ...{ carbohydratePct: optionalNumber, sugarsPct: optionalNumber, fibrePct: optionalNumber },
  ashPct: optionalNumber,
  sodiumMgPer100g: optionalNumber,
}
const stagedLine = z.strictObject({ id: z.string(), massG: z.number(), isFlour: z.boolean(), stage: stageKind })
const pouredLine = z.strictObject({
  id: z.string(),
  massG: z.number(),
  kind,
  isPouredLiquid: z.boolean(),
  waterPct: optionalNumber,
})

/** No flour is a fault of the lines: the question does not ask for the flour itself. */
const lineField = (field: string) =>
  /^(flourMassG|finalFlourMassG|floursPct)$/.test(field) ? 'lines' : field.replace('target.', '')
const moistureFields: Record<string, string> = { fromMoisturePct: 'basisPct', toMoisturePct: 'moisturePct' }

const pouredFormula = (lines: readonly z.output<typeof pouredLine>[]) =>
  flatFormula(lines.map(({ waterPct, ...line }) => ({ ...line, composition: statedComposition({ waterPct }) })))

const plainDough = [
  { id: 'flour', massG: 1000, isFlour: true, stage: 'final-dough' as const },
  { id: 'water', massG: 600, isFlour: false, stage: 'final-dough' as const },
  { id: 'rye for the soaker', massG: 100, isFlour: true, stage: 'soaker' as const },
  { id: 'water for the soaker', massG: 120, isFlour: false, stage: 'soaker' as const },
]
const milkDough = [
  { id: 'flour', massG: 1000, kind: 'flour' as const, isPouredLiquid: false, waterPct: 14 },
  { id: 'milk', massG: 650, kind: 'dairy' as const, isPouredLiquid: true, waterPct: 88 },
]

export const formulaEntries = [
  calcEntry({
    id: 'formula/masses-from-percentages',
    input: z.strictObject({
      lines: z.array(z.strictObject({ id: z.string(), pctFlour: z.number(), isFlour: z.boolean() })),
      by: z.enum(['flour', 'dough-mass', 'pieces']),
      flourMassG: optionalNumber,
      doughMassG: optionalNumber,
      pieces: optionalNumber,
      pieceMassG: optionalNumber,
      lossShares: z.optional(z.array(z.number())),
      lossesOn: z.optional(lossesOn),
      lossesCombine: z.optional(lossesCombine),
    }),
    output: z.strictObject({
      flourMassG: z.number(),
      doughMassG: z.number(),
      lines: z.array(z.strictObject({ id: z.string(), massG: z.number() })),
      warnings: z.array(z.strictObject({ code: z.enum(['flours-not-100']), value: z.number() })),
    }),
    example: {
      lines: [
        { id: 'flour', pctFlour: 100, isFlour: true },
        { id: 'water', pctFlour: 62, isFlour: false },
        { id: 'salt', pctFlour: 2, isFlour: false },
      ],
      by: 'pieces',
      pieces: 24,
      pieceMassG: 550,
      lossShares: [0.02],
      lossesOn: 'dough',
      lossesCombine: 'added',
    },
    source: "definition of baker's percentage; common practice, no source",
    run: (q) => atFlatFields(lineField, () => massesFromPercentages({ lines: q.lines, target: flatScaleTarget(q) })),
  }),
  calcEntry({
    id: 'formula/dough-mass-for-pieces',
    input: z.strictObject({
      pieces: z.number(),
      pieceMassG: z.number(),
      lossShares: z.array(z.number()),
      lossesOn,
      lossesCombine,
    }),
    output: z.strictObject({ doughMassG: z.number() }),
    example: { pieces: 40, pieceMassG: 800, lossShares: [0.12, 0.02], lossesOn: 'dough', lossesCombine: 'compounded' },
    source: "German bakers' vocational school exercise, 2013 (added); mass balance (compounded)",
    run: ({ lossesOn: on, lossesCombine: combine, ...q }) => ({
      doughMassG: doughMassForPiecesG({ ...q, losses: { on, combine } }),
    }),
  }),
  calcEntry({
    id: 'formula/formula-totals',
    input: z.strictObject({ lines: z.array(stagedLine) }),
    output: z.strictObject({
      flourMassG: z.number(),
      doughMassG: z.number(),
      totalPctFlour: z.number(),
      preFermentedFlourShare: z.number(),
      lines: z.array(z.strictObject({ id: z.string(), massG: z.number(), pctFlour: z.number() })),
      stages: z.array(
        z.strictObject({ stage: stageKind, massG: z.number(), pctFlour: z.number(), flourShare: z.number() }),
      ),
    }),
    example: { lines: plainDough },
    source: "definition of baker's percentage: P. Healea, teaching page; J. Hamelman, Bread, 2004",
    run: (q) => {
      const { lines, stages, ...totals } = atFlatFields(lineField, () => formulaTotals(flatFormula(q.lines)))
      return {
        ...totals,
        lines: lines.map(({ lineId, ...line }) => ({ id: lineId, ...line })),
        stages: stages.map(({ kind: stage, massG, pctFlour, flourShare }) => ({ stage, massG, pctFlour, flourShare })),
      }
    },
  }),
  calcEntry({
    id: 'formula/final-dough-view',
    input: z.strictObject({ lines: z.array(stagedLine) }),
    output: z.strictObject({
      finalFlourMassG: z.number(),
      totalPctFinalFlour: z.number(),
      lines: z.array(z.strictObject({ id: z.string(), massG: z.number(), pctFinalFlour: z.number() })),
      stages: z.array(z.strictObject({ stage: stageKind, massG: z.number(), pctFinalFlour: z.number() })),
    }),
    example: { lines: plainDough },
    source: "Wild Yeast weblog, Baker's percentage tutorial, part 4, 2008",
    run: (q) => {
      const { lines, stages, ...view } = atFlatFields(lineField, () => finalDoughView(flatFormula(q.lines)))
      return {
        ...view,
        lines: lines.map(({ lineId, ...line }) => ({ id: lineId, ...line })),
        stages: stages.map(({ stageId, ...stage }) => ({ stage: stageKind.parse(stageId), ...stage })),
      }
    },
  }),
  calcEntry({
    id: 'formula/hydration',
    input: z.strictObject({
      lines: z.array(pouredLine),
      convention: z.enum(['plain-water', 'poured-liquids', 'water-beside-flour', 'all-water']),
    }),
    output: z.strictObject({
      massG: z.number(),
      pctFlour: z.number(),
      notStated: z.array(z.strictObject({ id: z.string() })),
      warnings: waterWarnings,
    }),
    example: { lines: milkDough, convention: 'water-beside-flour' },
    source: "trade and teaching glossaries of dough yield and baker's percentage; common practice, no source",
    run: (q) => {
      const { massG, pctFlour, notStatedLineIds, warnings } = atFlatFields(lineField, () =>
        hydration(pouredFormula(q.lines), q.convention),
      )
      return { massG, pctFlour, notStated: notStatedLineIds.map((id) => ({ id })), warnings }
    },
  }),
  calcEntry({
    id: 'formula/dough-yield',
    input: z.strictObject({ lines: z.array(pouredLine) }),
    output: z.strictObject({ netPct: z.number(), grossPct: z.number(), warnings: waterWarnings }),
    example: { lines: milkDough },
    source: 'J. Loderbauer, Das Bäckerbuch, 2016; German bread glossaries',
    run: (q) => atFlatFields(lineField, () => doughYield(pouredFormula(q.lines))),
  }),
  calcEntry({
    id: 'formula/nutrient-totals',
    input: z.strictObject({
      lines: z.array(z.strictObject({ id: z.string(), massG: z.number(), kind, ...composition })),
    }),
    output: z.strictObject({
      totals: z.array(
        z.strictObject({
          nutrient: z.enum(['water', 'fat', 'protein', 'sugars', 'fibre', 'salt']),
          massG: z.number(),
          pctFlour: z.number(),
          pctDough: z.number(),
          notStatedCount: z.number(),
        }),
      ),
      saltWeighedG: z.number(),
    }),
    example: {
      lines: [
        {
          id: 'flour',
          massG: 1000,
          kind: 'flour',
          waterPct: 14,
          proteinPct: 12,
          fatPct: 1.5,
          sugarsPct: 1,
          fibrePct: 3,
          sodiumMgPer100g: 2,
        },
        {
          id: 'milk',
          massG: 620,
          kind: 'dairy',
          waterPct: 88,
          proteinPct: 3.2,
          fatPct: 3.5,
          sugarsPct: 4.8,
          fibrePct: 0,
          sodiumMgPer100g: 43,
        },
        {
          id: 'salt',
          massG: 18,
          kind: 'salt',
          waterPct: 0,
          proteinPct: 0,
          fatPct: 0,
          sugarsPct: 0,
          fibrePct: 0,
          sodiumMgPer100g: 38_758,
        },
      ],
    },
    source: 'mass balance; salt is sodium × 2.5, Regulation (EU) 1169/2011, Annex I',
    run: (q) => {
      const lines = q.lines.map(({ id, massG, kind: of, ...parts }) => ({
        id,
        massG,
        kind: of,
        composition: statedComposition(parts),
      }))
      const { totals, saltWeighedG } = atFlatFields(lineField, () => nutrientTotals(flatFormula(lines)))
      return {
        totals: totals.map(({ notStatedLineIds, ...total }) => ({ ...total, notStatedCount: notStatedLineIds.length })),
        saltWeighedG,
      }
    },
  }),
  calcEntry({
    id: 'formula/composition-warnings',
    input: z.strictObject(composition),
    output: z.strictObject({
      warnings: z.array(z.strictObject({ code: warning, value: z.nullable(z.number()) })),
    }),
    example: {
      waterPct: 69,
      proteinPct: 8.4,
      fatPct: 1.9,
      carbohydratePct: 18.1,
      sugarsPct: 0,
      fibrePct: 8.1,
      ashPct: 1.8,
      sodiumMgPer100g: 30,
    },
    source: 'USDA National Nutrient Database for Standard Reference, release 28, 2015: rows that do not close',
    run: (q) => {
      const warnings = atFlatFields(['row.'], () => compositionWarnings('row', statedComposition(q)))
      return { warnings: warnings.map(({ code, value }) => ({ code, value: value ?? null })) }
    },
  }),
  calcEntry({
    id: 'formula/at-moisture-basis',
    input: z.strictObject({ valuePct: z.number(), moisturePct: z.number(), basisPct: z.number() }),
    output: z.strictObject({ valuePct: z.number() }),
    example: { valuePct: 12.1, moisturePct: 13.2, basisPct: 14 },
    source: 'flour guide of a US milling company, 2006',
    run: (q) => ({ valuePct: atMoistureBasisPct(q) }),
  }),
  calcEntry({
    id: 'formula/equal-dry-flour-mass',
    input: z.strictObject({ flourMassG: z.number(), fromMoisturePct: z.number(), toMoisturePct: z.number() }),
    output: z.strictObject({ flourMassG: z.number() }),
    example: { flourMassG: 300, fromMoisturePct: 14, toMoisturePct: 12.4 },
    source: '86-based rule of AACC 54-21, generalised; mass balance of dry matter',
    run: (q) => ({ flourMassG: equalDryFlourMassG(q) }),
  }),
  calcEntry({
    id: 'formula/correct-for-moisture',
    input: z.strictObject({
      flourMassG: z.number(),
      waterMassG: z.number(),
      moisturePct: z.number(),
      basisPct: z.number(),
    }),
    output: z.strictObject({
      flourMassG: z.number(),
      waterMassG: z.number(),
      waterPctFlour: z.number(),
      possible: z.boolean(),
    }),
    example: { flourMassG: 1000, waterMassG: 620, moisturePct: 12.5, basisPct: 14 },
    source: 'mass balance at constant dough composition',
    run: (q) =>
      atFlatFields(
        (field) => moistureFields[field] ?? field,
        () => correctForMoisture(q),
      ),
  }),
  calcEntry({
    id: 'formula/farinograph-absorption',
    input: z.strictObject({
      bowl: z.enum(['300', '50']),
      flourMassG: z.number(),
      waterMl: z.number(),
      consistencyUnits: z.number(),
    }),
    output: z.strictObject({ absorptionPct: z.number(), warnings: z.array(z.enum(['unusual-absorption'])) }),
    example: { bowl: '300', flourMassG: 296.1, waterMl: 178.5, consistencyUnits: 508 },
    source: 'AACC 54-21 and ISO 5530-1, formulas from memory',
    run: ({ bowl, ...q }) => farinographAbsorption({ bowlG: bowl === '300' ? 300 : 50, ...q }),
  }),
  calcEntry({
    id: 'formula/round-to-resolutions',
    input: z.strictObject({
      lines: z.array(z.strictObject({ id: z.string(), massG: z.number(), resolutionG: z.number() })),
    }),
    output: z.strictObject({
      lines: z.array(
        z.strictObject({ id: z.string(), exactG: z.number(), massG: z.number(), relativeError: z.number() }),
      ),
      driftG: z.number(),
      warnings: z.array(z.strictObject({ code: z.enum(['rounded-to-zero']), id: z.string() })),
    }),
    example: {
      lines: [
        { id: 'flour', massG: 5133.4, resolutionG: 5 },
        { id: 'water', massG: 3182.7, resolutionG: 5 },
        { id: 'salt', massG: 102.7, resolutionG: 1 },
      ],
    },
    source: 'largest remainder method (Hamilton); with several resolutions our own extension of it',
    run: (q) => {
      const { warnings, ...rounded } = roundToResolutions(q.lines)
      return { ...rounded, warnings: warnings.map(({ code, lineId }) => ({ code, id: lineId })) }
    },
  }),
] as const
