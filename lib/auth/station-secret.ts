import 'server-only'
import type { Tx } from '../db/client'
import { hashSecret, makeSecret } from './secret'
import { latestMoment, stationSecretAgainMs, stationSecretLifeMs } from './session-life'

/** A book that was put back from a copy may know none but a former one. */
const mostHeld = 3

/** Hashes of the secrets that a tablet holds in one cookie, behind each other: the one that it was given last comes first. */
export function hashesOfHeld(held: string): string[] {
  return held
    .split('.')
    .slice(0, mostHeld)
    .map((secret) => hashSecret('station', secret))
}

/** What a tablet holds from now on: the secret that it is given, before those that it held. */
export function heldWith(secret: string, held: string): string {
  return [secret, ...held.split('.')].slice(0, mostHeld).join('.')
}

/**
 * Gives a tablet another secret when it has had its own for a month, and again the day after when that one never came to
 * it. Its former one is good until it shows the new one: an answer may be lost.
 * @returns the secret, which is kept nowhere but on the tablet; null while it needs none
 */
export async function renewStationSecret(
  tx: Tx,
  { bakeryId, stationId, secretHash }: { bakeryId: string; stationId: string; secretHash: string },
  now: Date,
): Promise<string | null> {
  const { enrolledAt, secretGivenAt, secretGivenHash } = await tx.station.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId, id: stationId } },
    select: { enrolledAt: true, secretGivenAt: true, secretGivenHash: true },
  })
  const since = secretGivenAt ?? enrolledAt
  const hasCome = secretGivenHash === null || secretGivenHash === secretHash
  const dueMs = hasCome ? stationSecretLifeMs : stationSecretAgainMs
  // Given while the clock was wrong, it would last for as long as the clock was ahead.
  const isDue = since === null || since > latestMoment() || now.getTime() - since.getTime() >= dueMs
  const secret = isDue ? makeSecret() : null
  const given = secret === null ? null : hashSecret('station', secret)
  if (given !== null) {
    const { count } = await tx.station.updateMany({
      where: { bakeryId, id: stationId, secretGivenHash, withdrawnAt: null },
      data: { secretGivenAt: now, secretGivenHash: given },
    })
    // Somebody else was given one at this moment, and shows it next time.
    if (count !== 1) return null
    await tx.signInPointer.create({ data: { hash: given, kind: 'station', bakeryId, targetId: stationId } })
  }
  if (hasCome || given !== null)
    await tx.signInPointer.deleteMany({
      where: {
        bakeryId,
        targetId: stationId,
        kind: 'station',
        hash: { notIn: [secretHash, ...(given === null ? [] : [given])] },
      },
    })
  return secret
}
