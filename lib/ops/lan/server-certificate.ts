import 'reflect-metadata'
import { createPrivateKey, webcrypto, X509Certificate } from 'node:crypto'
import {
  AuthorityKeyIdentifierExtension,
  BasicConstraintsExtension,
  ExtendedKeyUsage,
  ExtendedKeyUsageExtension,
  KeyUsageFlags,
  KeyUsagesExtension,
  SubjectAlternativeNameExtension,
  SubjectKeyIdentifierExtension,
  X509Certificate as SignedCertificate,
  X509CertificateGenerator,
} from '@peculiar/x509'
import type { Authority } from './authority'
import { ellipticKeys, notBefore, pemOfKey, signing } from './keys'
import { liesIn } from './networks'

/** What the front shows to a browser. It lives in memory only: each start makes one. */
export type ServerCertificate = {
  /** PEM: its own certificate, and the authority's after it. */
  chain: string
  key: string
  beginsAt: Date
  endsAt: Date
}

/** Tablets refuse a server's certificate that holds for longer than 398 days. */
const longestLifeMs = 397 * 86_400_000
/** A tablet's clock may be wrong, and a start that runs for a year must not end in an alarm. */
const renewBeforeMs = 60 * 86_400_000

/**
 * Makes a certificate for the authority's name, and for those of the addresses that it may vouch for: a single other one
 * would make the whole certificate worth nothing. It ends with the authority at the latest.
 */
export async function certify(
  authority: Authority,
  addresses: readonly string[],
  now: Date,
): Promise<ServerCertificate> {
  const issuer = new SignedCertificate(authority.certificate)
  const keys = await webcrypto.subtle.generateKey(ellipticKeys, true, ['sign', 'verify'])
  const signingKey = await webcrypto.subtle.importKey(
    'pkcs8',
    createPrivateKey(authority.key).export({ type: 'pkcs8', format: 'der' }),
    ellipticKeys,
    false,
    ['sign'],
  )
  const vouched = addresses.filter((address) => authority.networks.some((network) => liesIn(address, network)))
  const begins = notBefore(now)
  const endsAt = new Date(Math.min(begins.getTime() + longestLifeMs, issuer.notAfter.getTime()))
  const certificate = await X509CertificateGenerator.create({
    subject: [{ CN: [authority.name] }],
    issuer: issuer.subjectName,
    notBefore: begins,
    notAfter: endsAt,
    publicKey: keys.publicKey,
    signingKey,
    signingAlgorithm: signing,
    extensions: [
      new BasicConstraintsExtension(false, undefined, true),
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      new SubjectAlternativeNameExtension([
        { type: 'dns', value: authority.name },
        ...vouched.map((address) => ({ type: 'ip' as const, value: address })),
      ]),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
      await AuthorityKeyIdentifierExtension.create(issuer.publicKey),
    ],
  })
  return {
    chain: `${certificate.toString('pem')}\n${authority.certificate}\n`,
    key: pemOfKey(keys.privateKey),
    beginsAt: certificate.notBefore,
    endsAt: certificate.notAfter,
  }
}

/** Whether a new certificate is due, and would last longer than the one there is; also where the clock was put back. */
export function isDue(certificate: ServerCertificate, authority: Authority, now: Date): boolean {
  if (now < certificate.beginsAt) return true
  const authorityEndsAt = new X509Certificate(authority.certificate).validTo
  return certificate.endsAt.getTime() - now.getTime() < renewBeforeMs && certificate.endsAt < new Date(authorityEndsAt)
}
