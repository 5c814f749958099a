import 'server-only'
import type { Db, Tx } from '../../db/client'
import { Refusal } from '../refusal'
import { isMixingWater } from '../trials/mixing-water'
import { isEnded } from '../trials/rules'
import { countToSettle } from '../readings/count-to-settle'
import { everyMeasure } from '../readings/measures-to-read'
import type { MixedLine } from './dough-as-mixed'
import { judgeRows } from './judge-readings'
import { loadSealed, sealedOf } from './load-sealed'
import type { DeclaredTrial } from './trial-facts'

/**
 * A trial as its result needs it, with what is missing or odd of it, without anything of costs. Once its readings are
 * closed everything that was declared, baked and read comes out of what was closed.
 * @param reading the trial, where it is being read already
 * @throws Refusal 'not-found'
 */
export async function loadEvidence(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
  reading = readTrial(from, bakeryId, trialId),
) {
  const readRests = () =>
    Promise.all([
      everyMeasure(from, bakeryId),
      countToSettle(from, bakeryId, trialId).then((count) => [...count].sort()),
    ])
  // Nothing was closed of one that is open, whose rests are asked for beside its seal, which takes the longest.
  const restsOfOpen = reading.then((trial) => (trial && !isEnded(trial.state) ? readRests() : null))
  const [trial, found, rests] = await Promise.all([reading, loadSealed(from, bakeryId, trialId), restsOfOpen])
  if (!trial) throw new Refusal('not-found')
  const { bakery, ...rows } = trial
  const { batches, gaps, conduct, weighings } =
    found.closed?.judged ??
    (await judgeRows(from, {
      bakeryId,
      seal: found.rowsNow,
      trial,
      rests: rests ?? (await readRests()),
    }))
  const declared: DeclaredTrial = { ...(found.closed?.closing.declared ?? declaredOf(rows)), state: trial.state }
  return {
    header: headerOf(rows),
    declared,
    batches,
    arms: rows.arms,
    /** How heavy a piece of the control is scaled, and what of its dough is lost. */
    scaling: {
      scalingMassG: rows.controlVersion.scalingMassG,
      doughLossPct: rows.controlVersion.doughLossPct,
    },
    /** What somebody decided on it, and did not take back; null as long as nobody has. */
    decision: rows.outcomes[0] ?? null,
    timeZone: bakery.timeZone,
    gaps,
    conduct,
    weighings,
    sealed: sealedOf(found, isEnded(trial.state)),
    found,
  }
}

type Rows = Omit<NonNullable<Awaited<ReturnType<typeof readTrial>>>, 'bakery'>

function headerOf({ arms: _, factorName: __, factorLevels: ___, outcomes: ____, controlVersion, ...header }: Rows) {
  const { id, number, contentHash } = controlVersion
  return { ...header, controlVersion: { id, number, contentHash } }
}

/** What was declared before baking, by the trial's rows, which stand as they were approved. */
export function declaredOf(trial: Rows) {
  const {
    kind,
    state,
    measure,
    margin,
    marginUnit,
    confidencePct,
    holdsFor,
    mixingDays,
    batchesPerArm,
    piecesPerBatch,
  } = trial
  return {
    kind,
    state,
    measure,
    margin,
    marginUnit,
    confidencePct,
    holdsFor,
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
      holdsFor: true,
      blinded: true,
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
      controlVersion: {
        select: { id: true, number: true, contentHash: true, scalingMassG: true, doughLossPct: true },
      },
      planHash: true,
      bakery: {
        select: {
          timeZone: true,
          /** One that failed a check, whenever that was. */
          equipment: { where: { checks: { some: { isGood: false } } }, select: { id: true }, take: 1 },
        },
      },
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
          doses: { orderBy: { position: 'asc' }, select: { ingredientId: true } },
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
      outcomes: { where: { takenBackAt: null }, take: 1, select: { id: true, number: true, outcome: true } },
      mixDays: { orderBy: { number: 'asc' }, select: { number: true, day: true } },
    },
  })
}

function plannedWater(lines: readonly MixedLine[]): number | null {
  const water = lines.filter(isMixingWater)
  return water.length === 0 ? null : water.reduce((sum, { weighedG }) => sum + weighedG, 0)
}
