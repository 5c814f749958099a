import 'server-only'
import { Prisma } from '../../db/generated/client'
import type { LookedAt } from '../../db/generated/enums'

export type Looker = { name: string; what: LookedAt; first: Date; days: number }

/** Who looked at the key, the result and the evidence of a trial: since when, and on how many days; the first first. */
export function lookersOf({ bakeryId, trialId }: { bakeryId: string; trialId: string }): Prisma.Sql {
  return Prisma.sql`
    SELECT person.name, look.what::text AS what, min(look.at) AS first, count(*)::int AS days
    FROM look JOIN person ON person.bakery_id = look.bakery_id AND person.id = look.person_id
    WHERE look.bakery_id = ${bakeryId}::uuid AND look.trial_id = ${trialId}::uuid
    GROUP BY person.id, person.name, look.what
    ORDER BY min(look.at), person.name, look.what`
}
