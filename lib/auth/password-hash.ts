import 'server-only'
import { hash, verify } from '@node-rs/argon2'
import pLimit from 'p-limit'

/** Argon2id at the floor of the OWASP Password Storage Cheat Sheet: 19 MiB, two passes, one lane. */
const parameters = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const

// Each hash takes its memory for its time; more than four at once would starve the pages beside them.
const atOnce = pLimit(4)
const mostWaiting = 200

let dummy: Promise<string> | undefined

/** @throws Error when too many hashes are waiting */
export function hashPassword(password: string): Promise<string> {
  mustHaveRoom()
  return atOnce(() => hash(password, parameters))
}

/**
 * Whether the password is the one of the stored hash. Without a hash a dummy is computed, so that an unknown name
 * takes as long as a wrong password.
 */
export async function isPassword(stored: string | undefined, password: string): Promise<boolean> {
  mustHaveRoom()
  dummy ??= hash('no such person', parameters)
  const against = stored ?? (await dummy)
  const matches = await atOnce(() => verify(against, password))
  return matches && stored !== undefined
}

function mustHaveRoom(): void {
  if (atOnce.pendingCount >= mostWaiting) throw new Error('too many passwords are being checked')
}
