import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import type { StageKind } from '../../db/generated/enums'

type StageToWrite = { kind: StageKind; name: string; lines: readonly { ingredientId: string; pctFlour: number }[] }

/** Writes the stages and lines of a version that has none. The database refuses it once the version is signed. */
export async function writeStages(
  tx: Tx,
  bakeryId: string,
  versionId: string,
  stages: readonly StageToWrite[],
): Promise<void> {
  const withIds = stages.map((stage, position) => ({ ...stage, id: uuid(), position }))
  await tx.formulaStage.createMany({
    data: withIds.map(({ id, position, kind, name }) => ({ bakeryId, id, versionId, position, kind, name })),
  })
  const lines = withIds.flatMap((stage) => stage.lines.map((line) => ({ ...line, stageId: stage.id })))
  await tx.formulaLine.createMany({
    data: lines.map(({ stageId, ingredientId, pctFlour }, position) => ({
      bakeryId,
      id: uuid(),
      versionId,
      stageId,
      position,
      ingredientId,
      pctFlour,
    })),
  })
}

/** Takes the stages and lines of a draft away, to write them anew. */
export async function clearStages(tx: Tx, bakeryId: string, versionId: string): Promise<void> {
  await tx.formulaLine.deleteMany({ where: { bakeryId, versionId } })
  await tx.formulaStage.deleteMany({ where: { bakeryId, versionId } })
}
