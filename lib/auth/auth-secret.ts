import 'server-only'

/** The install's own secret: what it signs tokens with, and what other keys are derived from. @throws Error when it is missing or short */
export function authSecret(): string {
  const secret = process.env.NEXTAUTH_SECRET
  if (!secret || secret.length < 43)
    throw new Error('NEXTAUTH_SECRET must hold at least 256 bits; npm start makes one by itself')
  return secret
}
