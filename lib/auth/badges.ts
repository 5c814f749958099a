import 'server-only'
import { randomBytes } from 'node:crypto'
import type { Tx } from '../db/client'
import type { Role } from '../db/generated/enums'
import { hashSecret } from './secret'
import { endStationShifts } from './station-shifts'

type Whose = { bakeryId: string; personId: string }
type Holder = { id: string; name: string; role: Role }

/** As many digits as the largest number of 128 bits has. */
const digits = 39

/**
 * Gives somebody who has a PIN a badge, in place of the one that they had, which leads in no more from then on.
 * @returns its secret, 128 bits as a number of 39 digits, which is kept nowhere but on the badge
 */
export async function giveBadge(
  tx: Tx,
  { bakeryId, personId, madeById }: Whose & { madeById: string },
  now: Date,
): Promise<string> {
  const secret = BigInt(`0x${randomBytes(16).toString('hex')}`)
    .toString()
    .padStart(digits, '0')
  const hash = hashSecret('badge', secret)
  await tx.badge.upsert({
    where: { bakeryId_personId: { bakeryId, personId } },
    create: { bakeryId, personId, hash, madeById, madeAt: now },
    update: { hash, madeById, madeAt: now },
  })
  await endStationShifts(tx, { bakeryId, personId, byBadge: true }, now)
  return secret
}

/** Ends somebody's badge at once, and every shift at a tablet that it began. @returns whether there was one */
export async function endBadge(tx: Tx, whose: Whose, now: Date): Promise<boolean> {
  const { count } = await tx.badge.deleteMany({ where: whose })
  await endStationShifts(tx, { ...whose, byBadge: true }, now)
  return count === 1
}

/**
 * Whose badge it is, in this bakery alone. While the transaction lasts nobody withdraws the badge or makes another one.
 * @returns null where it is nobody's who works here
 */
export async function findByBadge(
  tx: Tx,
  { bakeryId, secret }: { bakeryId: string; secret: string },
): Promise<Holder | null> {
  const [found] = await tx.$queryRaw<Holder[]>`
    SELECT person.id, person.name, person.role::text FROM badge
    JOIN person ON person.bakery_id = badge.bakery_id AND person.id = badge.person_id
    WHERE badge.bakery_id = ${bakeryId}::uuid AND badge.hash = ${hashSecret('badge', secret)} AND person.ended_at IS NULL
    FOR SHARE OF badge`
  return found ?? null
}
