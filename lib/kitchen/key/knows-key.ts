import 'server-only'
import type { Db, Tx } from '../../db/client'

/** Whether a person opened the key of a trial's plan, so that they know which dough each of its codes stands for. */
export async function knowsKey(
  from: Db | Tx,
  q: { bakeryId: string; trialId: string; planHash: string | null; personId: string },
): Promise<boolean> {
  const { planHash, ...of } = q
  return (
    planHash !== null &&
    (await from.openedKey.findUnique({
      where: { bakeryId_trialId_planHash_personId: { ...of, planHash } },
      select: { at: true },
    })) !== null
  )
}
