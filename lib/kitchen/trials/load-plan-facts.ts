import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { StageKind } from '../../db/generated/enums'
import { compositionOf } from '../stores/composition-of'
import { Refusal } from '../refusal'
import type { PlanFacts, PlanIngredient, PlanScale } from './plan-types'
import { toldByClosedTrials } from './told-by-closed-trials'
import { watersOf } from './waters-of'

const ingredientColumns = {
  id: true,
  name: true,
  kind: true,
  activeName: true,
  activeShare: true,
  customaryLeastPct: true,
  customaryMostPct: true,
  customarySource: true,
  allergens: true,
  allergensCheckedAt: true,
  dustCaution: true,
  countsAsUsual: true,
  counts: true,
  bindsWater: true,
  endedAt: true,
  figures: { select: { figure: true, gPer100G: true } },
} as const

const versionColumns = {
  id: true,
  number: true,
  contentHash: true,
  scalingMassG: true,
  doughLossPct: true,
  doughTempC: true,
  mixTimeS: true,
  bulkTimeS: true,
  proofTimeS: true,
  bakeTempC: true,
  bakeTimeS: true,
  stages: {
    select: {
      id: true,
      kind: true,
      name: true,
      lines: { select: { id: true, ingredientId: true, pctFlour: true }, orderBy: { position: 'asc' } },
    },
    orderBy: { position: 'asc' },
  },
} as const

const scaleColumns = {
  id: true,
  name: true,
  resolutionG: true,
  repeatabilityG: true,
  leastG: true,
  mostG: true,
} as const

/**
 * Everything that the plan of a trial is drawn up from, as it stands now; null when there is no such trial.
 * @param controlId version to draw it up against, in place of the one that the draft was written against
 * @throws Refusal 'no-tap' where neither the trial nor the equipment says how warm the tap is
 */
export async function loadPlanFacts(
  from: Db | Tx,
  bakeryId: string,
  trialId: string,
  controlId?: string,
): Promise<PlanFacts | null> {
  const trial = await from.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: {
      id: true,
      number: true,
      kind: true,
      question: true,
      note: true,
      margin: true,
      marginUnit: true,
      confidencePct: true,
      mixingDays: true,
      batchesPerArm: true,
      piecesPerBatch: true,
      factorName: true,
      factorLevels: true,
      heldTotals: true,
      holdsFor: true,
      blinded: true,
      flourTempC: true,
      roomTempC: true,
      tapTempC: true,
      formula: { select: { id: true, name: true } },
      measure: { select: { id: true, name: true, unit: true, digits: true, level: true, direction: true } },
      scale: { select: scaleColumns },
      mixer: { select: { id: true, name: true, leastG: true, mostG: true, frictionCPerMin: true } },
      controlVersionId: true,
      lines: {
        select: { stageKind: true, ingredientId: true, mayMove: true, scaleId: true },
        orderBy: [{ stageKind: 'asc' }, { ingredientId: 'asc' }],
      },
      arms: {
        where: { position: { gt: 0 } },
        select: {
          name: true,
          onTop: true,
          doses: {
            select: {
              ingredientId: true,
              basis: true,
              doseOf: true,
              value: true,
              how: true,
              insteadOfId: true,
              equalBy: true,
              allOfIt: true,
            },
            orderBy: { position: 'asc' },
          },
        },
        orderBy: { position: 'asc' },
      },
    },
  })
  if (!trial) return null
  const {
    id,
    formula,
    measure,
    scale,
    mixer,
    controlVersionId,
    arms,
    lines,
    tapTempC,
    factorName,
    factorLevels,
    ...rest
  } = trial
  const said = { ...rest, ...(factorName === null ? {} : { factor: { name: factorName, levels: factorLevels } }) }
  const version = { bakeryId, id: controlId ?? controlVersionId }
  const {
    id: versionId,
    number: versionNumber,
    contentHash,
    stages,
    ...process
  } = await from.formulaVersion.findUniqueOrThrow({ where: { bakeryId_id: version }, select: versionColumns })
  const ids = [
    ...new Set(
      [...stages.flatMap((stage) => stage.lines), ...arms.flatMap((arm) => arm.doses)]
        .map(({ ingredientId }) => ingredientId)
        .concat(arms.flatMap((arm) => arm.doses.flatMap(({ insteadOfId }) => insteadOfId ?? []))),
    ),
  ]
  const rows = await from.ingredient.findMany({
    where: { bakeryId, id: { in: ids } },
    select: ingredientColumns,
    orderBy: { id: 'asc' },
  })
  const equipment = await from.equipment.findMany({
    where: { bakeryId, kind: { in: ['scale', 'hot_water', 'chilled_water', 'ice', 'tap_water'] }, endedAt: null },
    select: { kind: true, tempC: true, limitC: true, ...scaleColumns },
    orderBy: { id: 'asc' },
  })
  const chosen = asScale(scale)
  const others = equipment.flatMap((one) => (one.kind === 'scale' && one.id !== scale?.id ? (asScale(one) ?? []) : []))
  const waters = watersOf(equipment)
  const tap = tapTempC ?? waters.tap?.tempC ?? null
  if (tap === null) throw new Refusal('no-tap')
  const ownSpread = await toldByClosedTrials.ownSpread(from, {
    bakeryId,
    formulaId: formula.id,
    measureId: measure.id,
  })
  return {
    declared: {
      ...said,
      tapTempC: tap,
      bakery: bakeryId,
      trial: id,
      formula,
      measure,
      controlVersion: { id: versionId, number: versionNumber, contentHash },
    },
    process,
    stages,
    arms,
    choices: lines.filter((line) => isThere(line, stages, arms)),
    ingredients: rows.map(
      ({
        customaryLeastPct,
        customaryMostPct,
        customarySource,
        allergensCheckedAt,
        endedAt,
        figures,
        countsAsUsual,
        counts,
        ...row
      }): PlanIngredient => ({
        ...row,
        customary:
          customaryLeastPct === null || customaryMostPct === null || customarySource === null
            ? null
            : { leastPct: customaryLeastPct, mostPct: customaryMostPct, source: customarySource },
        allergensChecked: allergensCheckedAt !== null,
        isEnded: endedAt !== null,
        composition: compositionOf(figures),
        counts: countsAsUsual ? null : counts,
      }),
    ),
    scale: chosen,
    scales: chosen ? [chosen, ...others] : others,
    mixer:
      mixer && mixer.leastG !== null && mixer.mostG !== null
        ? { ...mixer, leastG: mixer.leastG, mostG: mixer.mostG }
        : null,
    waters,
    ownSpread,
  }
}

type Place = { stageKind: StageKind; ingredientId: string }
type Stages = PlanFacts['stages']

/** Whether what was chosen is of a line that the control or a dose still has: another version may have come in since. */
function isThere({ stageKind, ingredientId }: Place, stages: Stages, arms: PlanFacts['arms']): boolean {
  const isInControl = stages.some(
    (stage) => stage.kind === stageKind && stage.lines.some((line) => line.ingredientId === ingredientId),
  )
  return (
    isInControl ||
    (stageKind === 'final_dough' && arms.some(({ doses }) => doses.some((dose) => dose.ingredientId === ingredientId)))
  )
}

type ScaleRow = Omit<PlanScale, 'resolutionG' | 'mostG'> & { resolutionG: number | null; mostG: number | null }

/** The database's own checks see to it that a scale says what it needs. */
function asScale(row: ScaleRow | null): PlanScale | null {
  if (!row || row.resolutionG === null || row.mostG === null) return null
  const { id, name, resolutionG, repeatabilityG, leastG, mostG } = row
  return { id, name, resolutionG, repeatabilityG, leastG, mostG }
}
