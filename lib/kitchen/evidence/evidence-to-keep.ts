import 'server-only'
import type { DeskActor } from '../../auth/actor'
import type { Db, Tx } from '../../db/client'
import type { EvidenceToKeep } from '../../documents/evidence/text-of-evidence'
import { planCautions } from '../../words/plan-cautions'
import { wordsIn } from '../../words/words'
import { dayInZone } from '../day-in-zone'
import { calculations } from '../results/calculations'
import { costsWithRest } from '../results/costs-of-trial'
import type { loadEvidence } from '../results/load-evidence'
import { sureOf } from '../sure-of'
import { figuresShown, headlineShown } from './figures-shown'
import { whoKnew } from '../results/who-knew'
import type { VolumeRatios } from '../results/volume-ratios'
import type { WorkedOut } from './work-out'

/**
 * All that an ended trial shows at this moment, in parts: figures, costs at the prices of the day, cautions, what was
 * closed, and the plan.
 * @param kept.worked, kept.volumes of the very same facts as `loaded`
 * @param kept.amendments what came after the closing, of the same moment
 */
export async function evidenceToKeep(
  from: Db | Tx,
  actor: Pick<DeskActor, 'bakeryId' | 'personId' | 'name' | 'language'>,
  now: Date,
  loaded: Awaited<ReturnType<typeof loadEvidence>>,
  kept: { worked: WorkedOut; volumes: VolumeRatios; amendments: EvidenceToKeep['amendments'] },
): Promise<EvidenceToKeep> {
  const { bakeryId } = actor
  const { worked, volumes, amendments } = kept
  const { header, declared } = loaded
  const { arms, ...figures } = figuresShown(worked)
  const where = { bakeryId, trialId: header.id }
  const [costs, knew, count, closing, plan] = await Promise.all([
    costsWithRest(from, bakeryId, loaded, dayInZone(now, loaded.timeZone), volumes),
    whoKnew(from, bakeryId, header),
    from.reading.count({ where }),
    from.closing.findUnique({ where: { bakeryId_trialId: where }, select: { text: true } }),
    from.trial.findUnique({ where: { bakeryId_id: { bakeryId, id: header.id } }, select: { planText: true } }),
  ])
  const { kind, measure, margin, marginUnit, confidencePct, holdsFor, mixingDays, batchesPerArm, factor } = declared
  const language = actor.language ?? 'en'
  return {
    bakery: bakeryId,
    trial: { id: header.id, number: header.number },
    frozen: { at: now.toISOString(), by: { id: actor.personId, name: actor.name } },
    shown: {
      calculations,
      trial: {
        id: header.id,
        number: header.number,
        question: header.question,
        state: header.state,
        closedAt: header.closedAt?.toISOString() ?? null,
        closedWhy: header.closedWhy,
        planHash: header.planHash,
        formula: header.formula,
        controlVersion: header.controlVersion,
      },
      declared: {
        kind,
        measure: { name: measure.name, unit: measure.unit, digits: measure.digits, direction: measure.direction },
        margin,
        marginUnit,
        confidencePct,
        holdsFor,
        mixingDays,
        batchesPerArm,
        piecesPerBatch: header.piecesPerBatch,
        factor: factor && { name: factor.name, levels: [...factor.levels] },
      },
      arms: arms.map((result) => {
        const arm = sureOf(
          loaded.arms.find(({ position }) => position === result.arm),
          'the arm of a result',
        )
        return {
          ...result,
          id: arm.id,
          name: arm.name,
          good: costs.arms.find((cost) => cost.arm === result.arm)?.good ?? null,
        }
      }),
      ...figures,
      headline: headlineShown(worked.headline),
      readings: { count, hash: loaded.found.rowsNow },
    },
    costs: {
      ...costs,
      rests: {
        ...costs.rests,
        arms: costs.rests.arms.map((arm) => ({
          ...arm,
          lines: [...arm.lines],
          mixedLines: [...arm.mixedLines],
          goodPieces: [...arm.goodPieces],
          dosed: [...arm.dosed],
        })),
      },
    },
    cautions: { language, texts: planCautions(wordsIn(language)) },
    knowing: {
      knowers: (knew?.knowers ?? []).map(({ at, ...knower }) => ({ ...knower, at: at.toISOString() })),
      lookers: (knew?.lookers ?? []).map(({ first, ...looker }) => ({ ...looker, first: first.toISOString() })),
      measures: knew?.measures ?? [],
      correctedKnowing: [...(knew?.correctedKnowing ?? [])].sort(),
    },
    amendments,
    closing: closing?.text ?? null,
    plan: plan?.planText ?? null,
  }
}
