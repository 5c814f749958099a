import 'server-only'
import type { WeighingHow, WeighingPart } from '../../db/generated/enums'
import { readPlan } from '../../documents/plan/read-plan'
import { lineOffTarget, type LineFound } from '../conduct/line-off-target.input'
import { stoodBefore } from '../conduct/stood-before'
import { dayOfDate } from '../day-of-date'
import { isLotToConfirm } from '../stores/is-to-confirm'
import { isPastBestBefore } from '../stores/rules'
import { isApart, isSameInAll, linesOfPlan, type TrialLine } from './lines-of-plan'
import type { LotToWeigh } from './lots-to-weigh'

/** What of a weighing is read to be shown. */
export const weighingOfBatch = {
  id: true,
  stageId: true,
  ingredientId: true,
  part: true,
  how: true,
  massG: true,
  takenAt: true,
  receivedAt: true,
  supersedesId: true,
  reason: true,
  person: { select: { id: true, name: true } },
  lots: {
    select: {
      massG: true,
      lot: {
        select: {
          id: true,
          code: true,
          bestBefore: true,
          saidWithId: true,
          confirmedAt: true,
          endedAt: true,
          sameAs: { select: { code: true, bestBefore: true } },
        },
      },
    },
    orderBy: { position: 'asc' },
  },
} as const

type Entry = {
  id: string
  stageId: string
  ingredientId: string
  part: WeighingPart
  how: WeighingHow
  massG: number | null
  takenAt: Date
  receivedAt: Date
  supersedesId: string | null
  reason: string | null
  person: { id: string; name: string }
  lots: readonly {
    massG: number | null
    lot: {
      id: string
      code: string
      bestBefore: Date | null
      saidWithId: string | null
      confirmedAt: Date | null
      endedAt: Date | null
      sameAs: { code: string; bestBefore: Date | null } | null
    }
  }[]
}

/** From what a line was taken; no mass where it gave all of it. */
export type TakenFrom = {
  id: string
  /** As it was said, and the lot that it was found to be where that was a slip. */
  code: string
  sameAs: string | null
  massG: number | null
  isPast: boolean
  isToConfirm: boolean
}

/** One line of a dough, with what stands of it. */
export type LineOfBatch = {
  stage: TrialLine['stage']
  ingredient: TrialLine['ingredient']
  part: TrialLine['part']
  /** A dose that is weighed beside what the formula has of its ingredient. */
  isApart: boolean
  /** Every dough of the trial has the same of it. */
  isSame: boolean
  /** What it may be taken from. The same for every dough. */
  lots: readonly LotToWeigh[]
  /** What the plan has of it, g; null for who does not know the dough. */
  target: { massG: number; stepG: number; toleranceG: number | null } | null
  stands: {
    id: string
    who: string
    personId: string
    at: Date
    mayCorrect: boolean
    /** Why it was corrected; null for who does not know the dough, because whoever wrote it may have named a weight. */
    reason: string | null
    /** Null for who does not know the dough: a weight tells which it is, being off does, and a lot that something came from. */
    as: { how: WeighingHow; massG: number | null; found: LineFound; lots: readonly TakenFrom[] } | null
  } | null
}

/**
 * The lines of one dough as they are weighed, in the order of the plan and the same for every dough of its trial, with what
 * was written of each. Null where its plan cannot be read, which the page says beside it.
 * @param q.arm position of what it is; null for who does not know it
 */
export function weighingsOfBatch(q: {
  plan: { planText: string | null; planHash: string | null }
  arm: number | null
  entries: readonly Entry[]
  /** By ingredient. */
  lots: ReadonlyMap<string, readonly LotToWeigh[]>
  /** The calendar day of a moment in the bakery. */
  dayOf(at: Date): string
  mayPutRight(entry: Entry): boolean
}): LineOfBatch[] | null {
  const { planText, planHash } = q.plan
  const read = planText === null || planHash === null ? null : readPlan(planText, planHash)
  if (read?.outcome !== 'read') return null
  const standing = stoodBefore(
    q.entries.map((entry) => ({ ...entry, supersedes: entry.supersedesId })),
    null,
  )
  const lines = linesOfPlan(read.plan)
  return lines.map((line): LineOfBatch => {
    const { stage, ingredient, part, targets } = line
    const target = q.arm === null ? null : (targets.find(({ arm }) => arm === q.arm) ?? null)
    const stands = standing.find(
      (entry) => entry.stageId === stage.id && entry.ingredientId === ingredient.id && entry.part === part,
    )
    return {
      stage,
      ingredient,
      part,
      isApart: isApart(line, lines),
      isSame: isSameInAll(line),
      lots: q.lots.get(ingredient.id) ?? [],
      target: target && { massG: target.massG, stepG: target.stepG, toleranceG: target.toleranceG },
      stands: stands
        ? {
            id: stands.id,
            who: stands.person.name,
            personId: stands.person.id,
            at: stands.receivedAt,
            reason: target && stands.reason,
            mayCorrect: q.mayPutRight(stands),
            as: target && {
              how: stands.how,
              massG: stands.massG,
              lots: stands.lots.map(({ massG, lot }) => ({
                id: lot.id,
                code: lot.code,
                massG,
                sameAs: lot.sameAs?.code ?? null,
                isPast: isPastBestBefore(dayOfDate((lot.sameAs ?? lot).bestBefore), q.dayOf(stands.takenAt)),
                isToConfirm: isLotToConfirm(lot),
              })),
              found: lineOffTarget({
                how: stands.how,
                massG: stands.massG,
                targetG: target.massG,
                toleranceG: target.toleranceG,
              }),
            },
          }
        : null,
    }
  })
}
