import 'server-only'
import { levelOf } from '../../auth/rights'
import type { Db, Tx } from '../../db/client'
import { Role } from '../../db/generated/enums'
import type { PlanHands } from './rules'

/** Who had a hand in a trial's plan, and who of the people that are there could decide on it. The trial is there. */
export async function handsOfPlan(from: Db | Tx, bakeryId: string, trialId: string): Promise<PlanHands> {
  const { proposedById, authors, bakery } = await from.trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: trialId } },
    select: {
      proposedById: true,
      authors: { select: { personId: true } },
      bakery: {
        select: {
          worksAlone: true,
          people: { where: { endedAt: null, role: { in: Object.values(Role).filter((role) => levelOf({ kind: 'desk', role }, 'approve-plan') === 'yes') } }, select: { id: true } },
        },
      },
    },
  })
  return { proposedById, authorIds: authors.map(({ personId }) => personId), approverIds: bakery.people.map(({ id }) => id), worksAlone: bakery.worksAlone }
}
