import 'server-only'
import type { Db, Tx } from '../../db/client'
import { recordedHash } from '../recorded-hash'
import { Refusal } from '../refusal'
import { isEnded } from '../trials/rules'
import { countToSettle } from '../readings/count-to-settle'
import { everyMeasure } from '../readings/measures-to-read'
import { contentOfTrial } from './content-of-trial'
import { isMixingWater, type MixedLine } from './dough-as-mixed'
import { firstDifference, type Difference } from './first-difference'
import type { JudgedContent } from './judge-content'
import { judgeClosing, judgeRows, sealsOf, type Seals } from './judge-readings'
import type { DeclaredTrial } from './trial-facts'

/** Whether what is in the book is what was closed. */
export type Sealed =
  /** It still is open, or ended before readings were sealed. */
  | { outcome: 'open' | 'unsealed' }
  | { outcome: 'agrees'; hash: string }
  /** Somebody changed rows past every rule: nothing is concluded until that is cleared up. */
  | { outcome: 'differs'; hash: string; first: Difference | null }
  | { outcome: 'damaged' | 'unknown-format' }

/** Whether what is in the book is not what was closed, or cannot be told. */
export function isBroken({ outcome }: Sealed): boolean {
  return outcome === 'differs' || outcome === 'damaged' || outcome === 'unknown-format'
}

/**
 * A trial as its result needs it, with what is missing or odd of it, without anything of costs. Once its readings are
 * closed everything that was declared, baked and read comes out of what was closed. @throws Refusal 'not-found'
 */
export async function loadEvidence(from: Db | Tx, bakeryId: string, trialId: string) {
  const [trial, seals, recorded] = await Promise.all([
    readTrial(from, bakeryId, trialId),
    sealsOf(from, bakeryId, trialId),
    recordedHash(from, bakeryId, trialId, 'closing'),
  ])
  if (!trial) throw new Refusal('not-found')
  const { bakery, ...rows } = trial
  const isOfRecord = recorded === null || recorded === seals.closed?.hash
  const found: Found = !isOfRecord
    ? { sealed: { outcome: 'damaged' }, closed: null }
    : seals.closed
      ? await ofClosing(from, bakeryId, trialId, { ...seals.closed, rowsNow: seals.rowsNow })
      : { sealed: { outcome: isEnded(trial.state) ? 'unsealed' : 'open' }, closed: null }
  const { batches, gaps, conduct, weighings } =
    found.closed?.judged ??
    (await judgeRows(from, {
      bakeryId,
      seal: seals.rowsNow,
      trial,
      rests: await Promise.all([
        everyMeasure(from, bakeryId),
        countToSettle(from, bakeryId, trialId).then((count) => [...count].sort()),
      ]),
    }))
  const declared: DeclaredTrial = { ...(found.closed?.declared ?? declaredOf(rows)), state: trial.state }
  return {
    header: headerOf(rows),
    declared,
    batches,
    arms: rows.arms,
    timeZone: bakery.timeZone,
    gaps,
    conduct,
    weighings,
    sealed: found.sealed,
  }
}

type Found = { sealed: Sealed; closed: { judged: JudgedContent; declared: Omit<DeclaredTrial, 'state'> } | null }

async function ofClosing(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
  { hash, rowsSeal, isItsText, rowsNow }: NonNullable<Seals['closed']> & { rowsNow: string },
): Promise<Found> {
  if (!isItsText) return { sealed: { outcome: 'damaged' }, closed: null }
  const read = await judgeClosing(from, { bakeryId, trialId, hash })
  if (read.outcome !== 'read') return { sealed: { outcome: read.outcome }, closed: null }
  const closed = { judged: read.judged, declared: read.closing.declared }
  if (rowsSeal === rowsNow) return { sealed: { outcome: 'agrees', hash }, closed }
  const first = firstDifference(read.closing, await contentOfTrial(from, bakeryId, trialId))
  return { sealed: { outcome: 'differs', hash, first }, closed }
}

type Rows = Omit<NonNullable<Awaited<ReturnType<typeof readTrial>>>, 'bakery'>

function headerOf({ arms: _, factorName: __, factorLevels: ___, ...header }: Rows) {
  return header
}

/** What was declared before baking, by the trial's rows, which stand as they were approved. */
export function declaredOf(trial: Rows) {
  const { kind, state, measure, margin, marginUnit, confidencePct, mixingDays, batchesPerArm, piecesPerBatch } = trial
  return {
    kind,
    state,
    measure,
    margin,
    marginUnit,
    confidencePct,
    mixingDays,
    batchesPerArm,
    piecesPerBatch,
    factor:
      trial.factorName !== null && trial.factorLevels.length > 1
        ? { name: trial.factorName, levels: trial.factorLevels }
        : null,
    arms: trial.arms.map(({ position, name, lines }) => ({ position, name, plannedWaterG: plannedWater(lines) })),
  }
}

export function readTrial(from: Db | Tx, bakeryId: string, trialId: string) {
  return from.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: {
      id: true,
      number: true,
      kind: true,
      state: true,
      question: true,
      margin: true,
      marginUnit: true,
      confidencePct: true,
      mixingDays: true,
      batchesPerArm: true,
      piecesPerBatch: true,
      factorName: true,
      factorLevels: true,
      closedAt: true,
      closedWhy: true,
      revision: true,
      measure: { select: { id: true, code: true, name: true, unit: true, digits: true, level: true, direction: true } },
      formula: { select: { id: true, name: true } },
      controlVersion: { select: { id: true, number: true, contentHash: true } },
      planHash: true,
      bakery: { select: { timeZone: true } },
      decisions: {
        where: { verdict: 'approved' },
        orderBy: { at: 'desc' },
        take: 1,
        select: { at: true, personName: true, byProposer: true, byCoAuthor: true },
      },
      arms: {
        orderBy: { position: 'asc' },
        select: {
          id: true,
          position: true,
          name: true,
          lines: {
            orderBy: { position: 'asc' },
            select: {
              ingredientId: true,
              massG: true,
              weighedG: true,
              ingredient: { select: { name: true, kind: true } },
              stage: { select: { kind: true } },
            },
          },
        },
      },
      mixDays: { orderBy: { number: 'asc' }, select: { number: true, day: true } },
    },
  })
}

function plannedWater(lines: readonly MixedLine[]): number | null {
  const water = lines.filter(isMixingWater)
  return water.length === 0 ? null : water.reduce((sum, { weighedG }) => sum + weighedG, 0)
}
