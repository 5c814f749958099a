import 'server-only'
import { v7 as uuid } from 'uuid'
import type { Tx } from '../../db/client'
import type { VersionRead } from './read-version'
import { writeStages } from './write-content'

/**
 * Writes the next version of a formula as a draft: batch, process and method of the one it is from, with stages of
 * its own. The formula is held already.
 */
export async function addDraft(
  tx: Tx,
  q: { from: VersionRead; reason: string; stages: Parameters<typeof writeStages>[3]; draftedById: string; now: Date },
): Promise<{ versionId: string; number: number }> {
  const {
    bakeryId,
    formulaId,
    scalingMassG,
    pieces,
    doughLossPct,
    doughTempC,
    mixTimeS,
    bulkTimeS,
    proofTimeS,
    bakeTempC,
    bakeTimeS,
    method,
  } = q.from
  const { _max } = await tx.formulaVersion.aggregate({ where: { bakeryId, formulaId }, _max: { number: true } })
  const number = (_max.number ?? 0) + 1
  const versionId = uuid()
  await tx.formulaVersion.create({
    data: {
      bakeryId,
      id: versionId,
      formulaId,
      number,
      fromVersionId: q.from.id,
      reason: q.reason,
      ...{
        scalingMassG,
        pieces,
        doughLossPct,
        doughTempC,
        mixTimeS,
        bulkTimeS,
        proofTimeS,
        bakeTempC,
        bakeTimeS,
        method,
      },
      draftedById: q.draftedById,
      createdAt: q.now,
      revision: 1,
    },
  })
  await writeStages(tx, bakeryId, versionId, q.stages)
  return { versionId, number }
}
