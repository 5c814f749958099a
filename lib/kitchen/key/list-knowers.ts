import 'server-only'
import type { Db, Tx } from '../../db/client'
import { Prisma } from '../../db/generated/client'

export type Knower = {
  name: string
  /** Of the one dough that they know; null for the whole key. */
  code: string | null
  at: Date
}

type OfPlan = { bakeryId: string; trialId: string; planHash: string | null }

/** Who knows which dough of a trial is which, since when, the first first. The key of a plan that was drawn up anew since is none. */
export async function listKnowers(from: Db | Tx, q: OfPlan): Promise<Knower[]> {
  return from.$queryRaw<Knower[]>(knowersOf(q))
}

/** The same as a statement, to be asked with others. */
export function knowersOf({ bakeryId, trialId, planHash }: OfPlan): Prisma.Sql {
  return Prisma.sql`
    SELECT person.name, known.code, known.at FROM (
      SELECT person_id, NULL::text AS code, at FROM opened_key
      WHERE bakery_id = ${bakeryId}::uuid AND trial_id = ${trialId}::uuid AND plan_hash = ${planHash}
      UNION ALL
      SELECT opened.person_id, batch.code, opened.at FROM opened_dough_key AS opened
      JOIN batch ON batch.bakery_id = opened.bakery_id AND batch.id = opened.batch_id
      WHERE opened.bakery_id = ${bakeryId}::uuid AND opened.trial_id = ${trialId}::uuid
    ) AS known
    JOIN person ON person.bakery_id = ${bakeryId}::uuid AND person.id = known.person_id
    ORDER BY known.at, person.name, known.code`
}
