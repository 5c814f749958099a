import { z } from 'zod'
import { calcEntry } from '../entry'
import { atFlatFields } from '../flat-fields'
import { batchOrder } from './batch-order'
import { controlBatches } from './control-batches'
import { gainPower } from './gain-power'
import { powerEntries } from './power-entries'
import { threeDigitCodes } from './three-digit-codes'

/** 'milk, egg' as a list; nothing written is no allergen. */
const listed = (text: string | undefined) =>
  (text ?? '')
    .split(',')
    .map((name) => name.trim())
    .filter(Boolean)

export const planEntries = [
  calcEntry({
    id: 'plan/batch-order',
    input: z.strictObject({
      seed: z.string(),
      blockCount: z.int().min(0).max(366),
      arms: z.array(
        z.strictObject({ arm: z.string(), batchesPerBlock: z.number(), addedAllergens: z.optional(z.string()) }),
      ),
    }),
    output: z.strictObject({
      batches: z.array(
        z.strictObject({
          block: z.string(),
          place: z.number(),
          arm: z.string(),
          copy: z.number(),
          cleanDownOf: z.string(),
        }),
      ),
      warnings: z.array(z.strictObject({ code: z.enum(['place-tied-to-allergen']) })),
    }),
    example: {
      seed: 'rye week 12',
      blockCount: 3,
      arms: [
        { arm: 'control', batchesPerBlock: 2 },
        { arm: 'B', batchesPerBlock: 1 },
        { arm: 'C', batchesPerBlock: 1, addedAllergens: 'milk' },
      ],
    },
    source:
      'R. A. Fisher, The Design of Experiments, 1935 (randomised blocks); allergen steps: common practice, no source',
    run: ({ seed, blockCount, arms }) => {
      const order = atFlatFields(
        (field) => (field === 'blocks' ? 'blockCount' : field),
        () =>
          batchOrder({
            seed,
            blocks: Array.from({ length: blockCount }, (_, i) => String(i + 1)),
            arms: arms.map(({ addedAllergens, ...arm }) => ({ ...arm, addedAllergens: listed(addedAllergens) })),
          }),
      )
      return {
        batches: order.batches.map(({ cleanDownOf, ...batch }) => ({ ...batch, cleanDownOf: cleanDownOf.join(', ') })),
        warnings: order.warnings.map((code) => ({ code })),
      }
    },
  }),
  calcEntry({
    id: 'plan/three-digit-codes',
    input: z.strictObject({ seed: z.string(), count: z.number() }),
    output: z.strictObject({ codes: z.array(z.strictObject({ code: z.string() })) }),
    example: { seed: 'rye week 12', count: 6 },
    source: 'random three-digit codes in sensory work; common practice, no source',
    run: (q) => ({ codes: threeDigitCodes(q).map((code) => ({ code })) }),
  }),
  calcEntry({
    id: 'plan/control-batches',
    input: z.strictObject({ testArmCount: z.number(), batchesPerArm: z.number() }),
    output: z.strictObject({ suggested: z.number(), extra: z.number() }),
    example: { testArmCount: 4, batchesPerArm: 3 },
    source: 'C. W. Dunnett, JASA 50, 1955 (allocation √k)',
    run: controlBatches,
  }),
  calcEntry({
    id: 'plan/gain-power',
    input: z.strictObject({
      layout: z.enum(['complete-blocks', 'no-blocks']),
      blocks: z.number(),
      armBatchesPerBlock: z.number(),
      controlBatchesPerBlock: z.number(),
      loavesPerBatch: z.number(),
      blockSd: z.number(),
      batchSd: z.number(),
      loafSd: z.number(),
      trueDifferences: z.array(z.number()),
      worthwhile: z.number(),
      goodDirection: z.enum(['larger', 'smaller']),
      confidence: z.number(),
      runs: z.number(),
      seed: z.string(),
    }),
    output: z.strictObject({
      runs: z.number(),
      residualDf: z.number(),
      criticalValue: z.number(),
      differenceSe: z.number(),
      arms: z.array(
        z.strictObject({
          trueDifference: z.number(),
          power: z.number(),
          powerSe: z.number(),
          betterShare: z.number(),
          clearlyShare: z.number(),
          worseShare: z.number(),
          noWorthwhileDifferenceShare: z.number(),
          undecidedShare: z.number(),
        }),
      ),
    }),
    example: {
      layout: 'complete-blocks',
      blocks: 5,
      armBatchesPerBlock: 1,
      controlBatchesPerBlock: 1,
      loavesPerBatch: 4,
      blockSd: 60,
      batchSd: 45,
      loafSd: 40,
      trueDifferences: [150, 75],
      worthwhile: 100,
      goodDirection: 'larger',
      confidence: 0.95,
      runs: 2000,
      seed: 'rye week 12',
    },
    source: 'normal theory of the additive model, S. R. Searle, Linear Models, 1971; the verdict rule is our own',
    run: ({
      layout,
      blocks,
      armBatchesPerBlock,
      controlBatchesPerBlock,
      loavesPerBatch,
      blockSd,
      batchSd,
      loafSd,
      ...q
    }) => {
      const found = atFlatFields(flatField, () =>
        gainPower({
          ...q,
          design: { layout, blocks, armBatchesPerBlock, controlBatchesPerBlock, loavesPerBatch },
          spread: { blockSd, batchSd, loafSd },
        }),
      )
      return {
        runs: found.runs,
        residualDf: found.residualDf,
        criticalValue: found.criticalValue,
        differenceSe: found.differenceSe,
        arms: found.arms.map(({ share, ...arm }) => ({
          ...arm,
          betterShare: share.better,
          clearlyShare: share.clearly,
          worseShare: share.worse,
          noWorthwhileDifferenceShare: share['no-worthwhile-difference'],
          undecidedShare: share.undecided,
        })),
      }
    },
  }),
  ...powerEntries,
] as const

function flatField(field: string): string {
  if (field === 'design') return 'blocks'
  if (field.startsWith('spread.batchSd +')) return 'batchSd'
  if (field === 'trueDifferences.length') return 'trueDifferences'
  return field.replace(/^(design|spread)\./, '')
}
