import 'server-only'
import type { Tx } from '../../db/client'
import { Refusal } from '../refusal'

/** Holds a formula until the transaction ends: numbers, drafts and signatures of its versions are decided one after another. */
async function lockFormula(tx: Tx, bakeryId: string, formulaId: string): Promise<void> {
  const rows = await tx.$queryRaw<
    unknown[]
  >`SELECT 1 FROM formula WHERE bakery_id = ${bakeryId}::uuid AND id = ${formulaId}::uuid FOR UPDATE`
  if (rows.length === 0) throw new Refusal('not-found')
}

/** Holds the formula of a version. @returns the formula's id @throws Refusal 'not-found' */
export async function lockFormulaOfVersion(tx: Tx, bakeryId: string, versionId: string): Promise<string> {
  const version = await tx.formulaVersion.findUnique({
    where: { bakeryId_id: { bakeryId, id: versionId } },
    select: { formulaId: true },
  })
  if (!version) throw new Refusal('not-found')
  await lockFormula(tx, bakeryId, version.formulaId)
  return version.formulaId
}
