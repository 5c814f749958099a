import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import { controlName } from './draw-up-arm'
import type { TrialContent } from './trial-content.input'

/** The columns of a trial that its content fills. */
export function columnsOf({ arms: _arms, factor, ...columns }: TrialContent) {
  return { ...columns, factorName: factor?.name ?? null, factorLevels: factor?.levels ?? [] }
}

/** Writes the control and the arms of a draft afresh, with their doses. */
export async function writeArms(tx: Tx, bakeryId: string, trialId: string, arms: TrialContent['arms']): Promise<void> {
  await removeArms(tx, bakeryId, trialId)
  const rows = [{ name: controlName, onTop: false, doses: [] as TrialContent['arms'][number]['doses'] }, ...arms].map(
    (arm, position) => ({ ...arm, id: uuid(), position }),
  )
  await tx.arm.createMany({
    data: rows.map(({ id, position, name, onTop }) => ({ bakeryId, id, trialId, position, name, onTop })),
  })
  await tx.armDose.createMany({
    data: rows.flatMap((arm) =>
      arm.doses.map((dose, position) => ({ bakeryId, id: uuid(), armId: arm.id, position, ...dose })),
    ),
  })
}

async function removeArms(tx: Tx, bakeryId: string, trialId: string): Promise<void> {
  await removePlan(tx, bakeryId, trialId)
  await tx.armDose.deleteMany({ where: { bakeryId, arm: { trialId } } })
  await tx.arm.deleteMany({ where: { bakeryId, trialId } })
}

/** Takes away what a proposed plan drew up: it was not approved, and the next one draws its own. */
export async function removePlan(tx: Tx, bakeryId: string, trialId: string): Promise<void> {
  await tx.batch.deleteMany({ where: { bakeryId, trialId } })
  await tx.mixingDay.deleteMany({ where: { bakeryId, trialId } })
  await tx.armLine.deleteMany({ where: { bakeryId, arm: { trialId } } })
}

/** What the record says of a draft. */
export function summaryOf(content: TrialContent) {
  return {
    kind: content.kind,
    question: content.question,
    formula: content.formulaId,
    margin: `${content.margin} ${content.marginUnit}`,
    doughs: content.mixingDays * content.batchesPerArm * (content.arms.length + 1),
    arms: content.arms.map(({ name }) => name),
    holdsFor: content.holdsFor,
    blinded: content.blinded,
    ...(content.factor ? { factor: content.factor } : {}),
  }
}
