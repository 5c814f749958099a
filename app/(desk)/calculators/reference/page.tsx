import type { Metadata } from 'next'
import { PageLink } from '@/lib/ui/page-link'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { listCalculations } from '@/lib/kitchen/calculators/list-calculations'
import { calculationWords } from '@/lib/kitchen/calculators/calculation-words'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { aboutReference } from './about-reference'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).calculators.reference.title }
}

/** The subjects of the reference; each has a page of its own, because all of it at once would be a book. */
export default async function ReferencePage() {
  const language = await currentLanguage()
  const { calculators: text } = wordsIn(language)
  const { calculations } = await ask(listCalculations)
  const subjects = [...new Set(calculations.map(({ id }) => id.split('/')[0] ?? ''))]
  return (
    <Sheet
      kicker={text.reference.title}
      headline={say(text.reference.headline, language, { count: calculations.length })}
      margin={aboutReference(text)}
    >
      <Section id="subjects" title={text.list.subjects}>
        <SheetTable
          caption={text.list.subjects}
          captionHidden
          columns={[
            { key: 'subject', label: text.subject },
            { key: 'count', label: text.reference.count, numeric: true },
          ]}
        >
          {subjects.map((subject) => {
            const own = calculations.filter(({ id }) => id.startsWith(`${subject}/`))
            return (
              <tr key={subject}>
                <Cell head>
                  <PageLink href={`/calculators/reference/${subject}`}>
                    {calculationWords(own[0]?.id ?? subject, language).subject}
                  </PageLink>
                </Cell>
                <Cell numeric>{own.length}</Cell>
              </tr>
            )
          })}
        </SheetTable>
      </Section>
      <ActionRow>
        <LinkButton tone="plain" href="/calculators">
          {text.back}
        </LinkButton>
      </ActionRow>
    </Sheet>
  )
}
