import { Section } from '@/lib/ui/section'
import type { Words } from '@/lib/words/words'
import { AddressWithCode } from './address-with-code'

/** Where a tablet learns to trust the bakery's own certificate. */
export function TrustSection({
  trust,
  text,
}: {
  trust: readonly { address: string; code: readonly (readonly boolean[])[] }[]
  text: Words['stations']
}) {
  return (
    <Section id="trust" title={text.trustTitle} note={text.trustNote}>
      <p className="max-w-measure">{text.trustText}</p>
      {trust.length > 1 ? <p className="mt-2 max-w-measure">{text.trustSeveral}</p> : null}
      {trust.map(({ address, code }) => (
        <AddressWithCode key={address} address={address} code={code} label={text.trustPicture} />
      ))}
    </Section>
  )
}
