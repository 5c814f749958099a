import 'server-only'
import { z } from 'zod'
import { conditionCode, conditions, declared, flags, good, trial } from '../evidence/figures'

const fTest = z.strictObject({ f: z.number(), df1: z.number(), df2: z.number(), p: z.number() })
const limit = z.number().nullable()

const effect = z.strictObject({
  /** In the measure's unit, and in % of the control. */
  estimate: z.number(),
  low: limit,
  high: limit,
  pct: limit,
  lowPct: limit,
  highPct: limit,
  p: limit,
  /** By its own mixing days alone, in what the margin was declared in. */
  own: z.strictObject({ days: z.int(), low: limit, high: limit }).nullable(),
})

const arm = z.strictObject({
  arm: z.int(),
  id: z.string(),
  name: z.string(),
  standing: z.enum(['control', 'compared', 'look-only', 'no-batches']),
  batches: z.int(),
  loaves: z.int(),
  mean: z.number().nullable(),
  effect: effect.nullable(),
  verdict: z
    .strictObject({
      verdict: z.enum([
        'better',
        'better-on-pooled-error-only',
        'worse',
        'no-worthwhile-difference',
        'undecided',
        'no-worse',
        'same',
        'different',
      ]),
      clearly: z.boolean(),
    })
    .nullable(),
  lies: z
    .enum([
      'gain-that-matters',
      'gain-perhaps-matters',
      'small-gain',
      'within-margin',
      'none-to-gain-that-matters',
      'none-to-loss-that-matters',
      'anything',
      'small-loss',
      'loss-perhaps-matters',
      'loss-that-matters',
    ])
    .nullable(),
  doubts: z.array(conditionCode),
  good: good.nullable(),
})

const comparison = {
  /** Fewer mixing days than planned: an indication, and no verdict. */
  isIndication: z.boolean(),
  controlMean: z.number().nullable(),
  /** The margin in what it was declared in; null where nothing can be judged by it. */
  worthwhile: z.number().nullable(),
  method: z
    .strictObject({
      scale: z.enum(['units', 'log-ratio']),
      adjustment: z.enum(['student-t', 'dunnett-product', 'dunnett-lattice']),
      limits: z.enum(['two-sided', 'one-sided-pair']),
      df: z.number(),
      /** In the measure's unit, or in % on logarithms. */
      doughSd: z.number(),
    })
    .nullable(),
  loafVariation: z.strictObject({ sd: z.number(), df: z.number() }).nullable(),
  levels: z
    .strictObject({
      factor: z.string(),
      levels: z.array(z.string()),
      cells: z.array(z.strictObject({ arm: z.int(), level: z.string(), mean: z.number() })),
      tests: z.strictObject({ arm: fTest, level: fTest, armByLevel: fTest }).nullable(),
      limit: z.string().nullable(),
    })
    .nullable(),
  conditions,
  flags,
  doughCheck: z.enum(['this-dough', 'one-of-these', 'none-stands-out', 'cannot-be-told', 'too-many']),
}

const limits = z.array(
  z.strictObject({
    code: z.enum([
      'stopped-early',
      'fewer-days',
      'one-day',
      'no-control',
      'arm-without-batches',
      'arm-on-one-day',
      'no-arms-left',
      'no-degrees',
      'zero-variance',
      'too-many-doughs',
      'unequal-loaves',
      'no-true-zero',
      'margin-unusable',
      'bad-dough-not-told',
      'no-direction',
      'look-only-asked',
      'levels-not-balanced',
      'levels-one-day',
      'not-computable',
    ]),
    arm: z.int().nullable(),
    facts: z.record(z.string(), z.number()),
  }),
)

/** Every figure of a result, as it was shown. Numbers in full, times in UTC. */
export const shownOfFormat1 = z.strictObject({
  format: z.literal(1),
  /** Of the calculations: another one may come to other figures. */
  calculations: z.int(),
  trial,
  declared,
  arms: z.array(arm),
  ...comparison,
  limits,
  /** Doughs that do not count, and why. */
  uncounted: z.array(
    z.strictObject({
      batch: z.string(),
      code: z.string(),
      arm: z.int(),
      why: z.enum([
        'lost',
        'set-aside',
        'not-baked',
        'open',
        'no-reading',
        'level-missing',
        'day-without-control',
        'day-without-others',
      ]),
    }),
  ),
  /** Of each dough that counts: its mean, and how far it lies from the control of its day. */
  points: z.array(
    z.strictObject({
      arm: z.int(),
      batchId: z.string(),
      mean: z.number(),
      difference: z.number(),
      loaves: z.array(z.number()),
    }),
  ),
  /** The arms with the doughs counted that were taken out after they were read; null where none were. */
  withTakenOut: z
    .strictObject({ codes: z.array(z.string()), arms: z.array(arm.omit({ id: true, name: true, good: true })) })
    .nullable(),
  /** Readings of the trial, and the hash over the values of all its doughs and readings as rows. */
  readings: z.strictObject({ count: z.int(), hash: z.string() }),
})
