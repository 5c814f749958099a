import { z } from 'zod'
import { line, note } from '../text.input'

export const heldTotal = z.enum(['dough_mass', 'water', 'fat', 'sugars', 'salt', 'protein', 'flour'])
export const doseBasis = z.enum(['pct_flour', 'ppm_flour', 'g_per_kg_flour'])
export const doseOf = z.enum(['product', 'active'])
export const doseHow = z.enum(['more', 'in_all', 'in_place'])
export const equalBy = z.enum(['mass', 'active', 'water', 'fat', 'sugars', 'protein', 'salt'])
export const marginUnit = z.enum(['pct', 'unit'])
export const holdsFor = z.enum(['any_day', 'these_days'])
export const blindTask = z.enum(['weighing', 'baking', 'measuring', 'tasting'])

/** What 200 % on flour is in each basis: more than any dough holds of one ingredient. */
const most = { pct_flour: 200, ppm_flour: 2_000_000, g_per_kg_flour: 2000 } as const

/**
 * More than the control (below zero: less), so much in all (0: left out), or in place of another ingredient, of which
 * the value goes out, or all of it.
 */
const dose = z
  .strictObject({
    ingredientId: z.uuid(),
    basis: doseBasis,
    doseOf,
    value: z.number(),
    how: doseHow.default('more'),
    insteadOfId: z.uuid().nullable().default(null),
    /** Has no amount: the value is 0. */
    allOfIt: z.boolean().default(false),
    equalBy: equalBy.nullable().default(null),
  })
  .superRefine((asked, context) => {
    const fault = (path: string, code: string) => context.addIssue({ code: 'custom', path: [path], params: { code } })
    if (Math.abs(asked.value) > most[asked.basis]) fault('value', 'dose-too-large')
    if (asked.value === 0 && asked.how !== 'in_all' && !asked.allOfIt) fault('value', 'dose-of-nothing')
    if (asked.allOfIt && asked.value !== 0) fault('value', 'amount-beside-all')
    if (asked.allOfIt && asked.how !== 'in_place') fault('allOfIt', 'wrong-choice')
    if (asked.value < 0 && asked.how !== 'more') fault('value', 'dose-below-zero')
    if (asked.how !== 'in_place') {
      if (asked.insteadOfId !== null) fault('insteadOfId', 'wrong-choice')
      if (asked.equalBy !== null) fault('equalBy', 'wrong-choice')
      return
    }
    if (asked.insteadOfId === null) fault('insteadOfId', 'missing')
    if (asked.insteadOfId === asked.ingredientId) fault('insteadOfId', 'instead-of-itself')
    if (asked.equalBy === null) fault('equalBy', 'missing')
    if (asked.doseOf !== 'product') fault('doseOf', 'replace-by-product')
  })

const arm = z.strictObject({
  name: line(80),
  /** Added as the supplier says, with nothing taken out for it. */
  onTop: z.boolean(),
  doses: z.array(dose).min(1).max(6),
})

/** Codes have three digits, so a trial has no more doughs than there are codes. */
const mostDoughs = 900

/** The kinds of question that can be planned as yet. */
const kind = z
  .enum(['gain', 'no_worse', 'same_as', 'which_dose', 'look_only'])
  .refine((asked): boolean => asked === 'gain' || asked === 'look_only', { params: { code: 'kind-not-yet' } })

/**
 * What is set apart within each dough: bake temperature, storage day, scaling weight. Each piece is of one level, in
 * turn, so that every dough has as many pieces of each.
 */
const mostLevels = 12
const mostLevelLength = 40
/** Characters of the levels of a factor as they are typed, each on a line of its own. */
export const mostLevelsText = mostLevels * (mostLevelLength + 1)

const factor = z.strictObject({
  name: line(80),
  levels: z
    .array(z.string().trim().normalize('NFC'))
    .min(2)
    .max(mostLevels)
    .refine((levels) => levels.every((level) => line(mostLevelLength).safeParse(level).success), {
      params: { code: 'level-unfit' },
    })
    .refine((levels) => new Set(levels.map((level) => level.toLowerCase())).size === levels.length, {
      params: { code: 'level-twice' },
    }),
})

/** Everything a draft of a trial says. */
const trialFields = {
  kind,
  question: line(300),
  formulaId: z.uuid(),
  measureId: z.uuid(),
  /** Smallest difference worth having. */
  margin: z.number().gt(0).max(1_000_000),
  marginUnit,
  confidencePct: z.number().min(50).max(99.9),
  mixingDays: z.int().min(1).max(30),
  /** On each mixing day. */
  batchesPerArm: z.int().min(1).max(12),
  piecesPerBatch: z.int().min(1).max(100),
  factor: factor.nullable().default(null),
  heldTotals: z.array(heldTotal).max(7),
  /** What the verdict is said of: with `these_days` each dough is an answer by itself, and nothing of other days. */
  holdsFor: holdsFor.default('any_day'),
  /** Who does these is not to know which dough is which; in one order, each once. */
  blinded: z
    .array(blindTask)
    .transform((tasks) => blindTask.options.filter((task) => tasks.includes(task)))
    .default([]),
  scaleId: z.uuid().nullable(),
  mixerId: z.uuid().nullable(),
  flourTempC: z.number().min(-20).max(50),
  roomTempC: z.number().min(-10).max(50),
  /** None where it is as the equipment says. */
  tapTempC: z.number().min(0).max(60).nullable(),
  note: note(2000),
  arms: z.array(arm).max(6),
}

const trialContent = z.strictObject(trialFields)
export type TrialContent = z.output<typeof trialContent>

/** A schema with the fields of a trial and others, and the rules that bind several of them. */
export function withTrialContent<Shape extends z.ZodRawShape>(others: Shape) {
  return z.strictObject({ ...others, content: trialContent.superRefine(checkTogether) })
}

function checkTogether(content: TrialContent, context: z.RefinementCtx): void {
  const fault = (path: string, code: string) => context.addIssue({ code: 'custom', path: [path], params: { code } })
  if (content.marginUnit === 'pct' && content.margin >= 100) fault('margin', 'margin-all-of-it')
  if (content.kind === 'gain' && content.arms.length === 0) fault('arms', 'arm-needed')
  if (content.arms.some((each) => !each.onTop) && content.heldTotals.length === 0) fault('heldTotals', 'hold-something')
  if (content.mixingDays * content.batchesPerArm * (content.arms.length + 1) > mostDoughs)
    fault('mixingDays', 'too-many-doughs')
  if (content.factor && content.piecesPerBatch % content.factor.levels.length !== 0)
    fault('piecesPerBatch', 'pieces-not-by-levels')
}
