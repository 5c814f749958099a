import { Section } from '@/lib/ui/section'
import { AddressWithCode } from './address-with-code'

/** What a tablet opens. */
export function OpenSection({
  title,
  sentence,
  found,
  label,
}: {
  title: string
  sentence: string
  found: { address: string; code: readonly (readonly boolean[])[] }
  label: string
}) {
  return (
    <Section id="open" title={title}>
      <p className="max-w-measure">{sentence}</p>
      <AddressWithCode address={found.address} code={found.code} label={label} />
    </Section>
  )
}
