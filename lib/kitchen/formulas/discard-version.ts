import 'server-only'
import type { Tx } from '../../db/client'
import type { VersionRead } from './read-version'

/** Marks a version that is not signed as dropped. The formula is held already. @returns whether it was still there to drop */
export async function discardVersion(
  tx: Tx,
  version: Pick<VersionRead, 'bakeryId' | 'id' | 'revision'>,
  now: Date,
): Promise<boolean> {
  const { bakeryId, id, revision } = version
  const { count } = await tx.formulaVersion.updateMany({
    where: { bakeryId, id, revision, signedAt: null, discardedAt: null },
    data: { discardedAt: now, revision: { increment: 1 } },
  })
  return count === 1
}
