import 'server-only'
import type { Tx } from '../../db/client'

/** Notes that somebody wrote content of a trial's draft; once is enough. */
export async function noteAuthor(
  tx: Tx,
  whose: { bakeryId: string; trialId: string; personId: string },
  now: Date,
): Promise<void> {
  await tx.trialAuthor.createMany({ data: [{ ...whose, at: now }], skipDuplicates: true })
}
