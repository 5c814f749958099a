import { X509Certificate } from 'node:crypto'
import type { FrontFacts } from '../../kitchen/stations/front-facts'
import type { Authority } from './authority'

/** What a person can compare of the authority with what a tablet shows. */
export function certificateFacts({ name, networks, certificate }: Authority): FrontFacts['certificate'] {
  const read = new X509Certificate(certificate)
  return {
    name: read.subject.replace(/^CN=/, ''),
    host: name,
    networks,
    fingerprint: read.fingerprint256,
    thumbprint: read.fingerprint,
    endsAt: new Date(read.validTo).toISOString(),
  }
}
