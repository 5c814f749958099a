import 'server-only'
import type { Db, Tx } from '../../db/client'
import type { TrialContent } from './trial-content.input'

/** What a draft says, in the form in which it was written; null when there is no such trial. */
export async function readContent(from: Db | Tx, bakeryId: string, trialId: string): Promise<TrialContent | null> {
  const trial = await from.trial.findUnique({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: {
      kind: true,
      question: true,
      formulaId: true,
      measureId: true,
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
      scaleId: true,
      mixerId: true,
      flourTempC: true,
      roomTempC: true,
      tapTempC: true,
      note: true,
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
  const { factorName, factorLevels, ...content } = trial
  return { ...content, factor: factorName === null ? null : { name: factorName, levels: factorLevels } }
}
