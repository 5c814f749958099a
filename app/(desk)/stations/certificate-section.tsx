import type { AnswerOf } from '@/lib/kitchen/query'
import type { getDesk } from '@/lib/kitchen/people/get-desk'
import type { getAddress } from '@/lib/kitchen/stations/get-address'
import { DefinitionList } from '@/lib/ui/definition-list'
import { Section } from '@/lib/ui/section'
import { formatDate } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

type Certificate = Extract<AnswerOf<typeof getAddress>, { way: 'front' }>['certificate']

/** What somebody compares with what the tablet shows. */
export function CertificateSection({
  certificate,
  bakery,
  text,
  language,
}: {
  certificate: Certificate
  bakery: AnswerOf<typeof getDesk>['bakery']
  text: Words['stations']
  language: Language
}) {
  const { name, host, networks, fingerprint, thumbprint, endsAt } = certificate
  return (
    <Section id="certificate" title={text.certificateTitle} note={text.certificateNote}>
      <DefinitionList
        entries={[
          { term: text.certificateName, detail: name },
          { term: text.fingerprint, detail: fingerprint, strong: true },
          { term: text.thumbprint, detail: thumbprint },
          { term: text.vouchesFor, detail: say(text.vouchesForText, language, { name: host, networks }) },
          { term: text.ends, detail: formatDate(new Date(endsAt), bakery) },
        ]}
      />
    </Section>
  )
}
