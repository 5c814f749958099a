import { KeyObject, type webcrypto } from 'node:crypto'

/** Keys that every browser and tablet of today takes (P-256). */
export const ellipticKeys = { name: 'ECDSA', namedCurve: 'P-256' } as const
export const signing = { name: 'ECDSA', hash: 'SHA-256' } as const

/** A tablet's clock may be behind ours. */
const clocksDifferMs = 3_600_000

/** From when a certificate made now holds. */
export function notBefore(now: Date): Date {
  return new Date(now.getTime() - clocksDifferMs)
}

export function pemOfKey(key: webcrypto.CryptoKey): string {
  return KeyObject.from(key).export({ type: 'pkcs8', format: 'pem' }).toString()
}
