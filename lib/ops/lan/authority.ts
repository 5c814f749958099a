import 'reflect-metadata'
import { randomBytes, webcrypto } from 'node:crypto'
import { AsnConvert } from '@peculiar/asn1-schema'
import {
  GeneralName,
  GeneralSubtree,
  GeneralSubtrees,
  id_ce_nameConstraints,
  NameConstraints,
} from '@peculiar/asn1-x509'
import {
  BasicConstraintsExtension,
  ExtendedKeyUsage,
  ExtendedKeyUsageExtension,
  Extension,
  KeyUsageFlags,
  KeyUsagesExtension,
  SubjectKeyIdentifierExtension,
  X509CertificateGenerator,
} from '@peculiar/x509'
import { ellipticKeys, notBefore, pemOfKey, signing } from './keys'

/** A certificate authority of the bakery's own. */
export type Authority = {
  /** The one name that it vouches for. */
  name: string
  /** The networks whose addresses it vouches for beside the name, such as 192.168.1.0/24. */
  networks: string[]
  /** PEM, as the key is. */
  certificate: string
  key: string
}

const authorityLifeDays = 10 * 365

/**
 * Makes a certificate authority that tablets are asked to trust. It can vouch for one name and the bakery's own networks,
 * for web servers alone, so whoever gets hold of its key can pass for nothing else.
 */
export async function makeAuthority(name: string, networks: readonly string[], now: Date): Promise<Authority> {
  const keys = await webcrypto.subtle.generateKey(ellipticKeys, true, ['sign', 'verify'])
  const certificate = await X509CertificateGenerator.createSelfSigned({
    // A part by chance: a browser refuses two authorities of one name and number.
    name: [{ CN: [`Evendough ${name} ${randomBytes(3).toString('hex')}`] }],
    notBefore: notBefore(now),
    notAfter: new Date(now.getTime() + authorityLifeDays * 86_400_000),
    keys,
    signingAlgorithm: signing,
    extensions: [
      new BasicConstraintsExtension(true, 0, true),
      new KeyUsagesExtension(KeyUsageFlags.keyCertSign | KeyUsageFlags.cRLSign, true),
      new ExtendedKeyUsageExtension([ExtendedKeyUsage.serverAuth]),
      namesOnly(name, networks),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  })
  return { name, networks: [...networks], certificate: certificate.toString('pem'), key: pemOfKey(keys.privateKey) }
}

/** The extension by which a certificate is worth something for these names only (RFC 5280, 4.2.1.10), marked critical. */
function namesOnly(name: string, networks: readonly string[]): Extension {
  const permitted = [{ dNSName: name }, ...networks.map((network) => ({ iPAddress: network }))]
  const constraints = new NameConstraints({
    permittedSubtrees: new GeneralSubtrees(
      permitted.map((form) => new GeneralSubtree({ base: new GeneralName(form) })),
    ),
  })
  return new Extension(id_ce_nameConstraints, true, AsnConvert.serialize(constraints))
}
