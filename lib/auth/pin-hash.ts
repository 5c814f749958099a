import 'server-only'
import { createHmac, hkdfSync } from 'node:crypto'
import { authSecret } from './auth-secret'
import { hashPassword, isPassword } from './password-hash'

/** As a password is hashed, with a pepper that is not in the database: six digits alone fall in seconds. */
export function hashPin(pin: string): Promise<string> {
  return hashPassword(peppered(pin))
}

/** Whether the PIN is the one of the stored hash; without a hash it takes as long. */
export function isPin(stored: string | undefined, pin: string): Promise<boolean> {
  return isPassword(stored, peppered(pin))
}

function peppered(pin: string): string {
  const pepper = Buffer.from(hkdfSync('sha256', authSecret(), '', 'evendough pin', 32))
  return createHmac('sha256', pepper).update(pin, 'utf8').digest('base64url')
}
