import 'server-only'
import type { Prisma } from '../../db/generated/client'

/** Which trial: itself, or the one of a batch, so that nobody has to read the batch first to ask about its trial. */
export type TrialOf = { trialId: string } | { batchId: string }

/** Where to find it. */
export function whereTrial(bakeryId: string, of: TrialOf): Prisma.TrialWhereInput {
  return 'trialId' in of ? { bakeryId, id: of.trialId } : { bakeryId, batches: { some: { id: of.batchId } } }
}
