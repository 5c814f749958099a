import type { Metadata } from 'next'
import { PageLink } from '@/lib/ui/page-link'
import { ask } from '@/app/ask'
import { currentLanguage } from '@/app/language'
import { isFound } from '@/lib/kitchen/calculators/is-found'
import { listCalculations } from '@/lib/kitchen/calculators/list-calculations'
import { ActionRow } from '@/lib/ui/action-row'
import { Cell } from '@/lib/ui/cell'
import { EmptyState } from '@/lib/ui/empty-state'
import { LinkButton } from '@/lib/ui/link-button'
import { Section } from '@/lib/ui/section'
import { Sheet } from '@/lib/ui/sheet'
import { SheetTable } from '@/lib/ui/sheet-table'
import { calculationWords } from '@/lib/kitchen/calculators/calculation-words'
import { textsOfCalculation } from '@/lib/kitchen/calculators/texts-of-calculation'
import { listOf } from '@/lib/words/list-of'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import { FindForm } from './find-form'

export async function generateMetadata(): Promise<Metadata> {
  return { title: wordsIn(await currentLanguage()).calculators.title }
}

export default async function CalculatorsPage({
  searchParams,
}: {
  searchParams: Promise<{ find?: string | string[] }>
}) {
  const asked = (await searchParams).find
  const find = (Array.isArray(asked) ? asked.join(' ') : (asked ?? '')).trim()
  const language = await currentLanguage()
  const { calculators } = wordsIn(language)
  const { list: text } = calculators
  const { calculations } = await ask(listCalculations)
  const found = calculations
    .map(({ gives, ...calculation }) => {
      const { subject, title, field } = calculationWords(calculation.id, language)
      return {
        id: calculation.id,
        subject,
        title,
        gives: gives.map(field),
        texts: textsOfCalculation(calculation, language),
      }
    })
    .filter(({ texts }) => isFound(texts, find))
  const subjects = [...new Set(found.map(({ id }) => id.split('/')[0] ?? ''))]

  return (
    <Sheet
      kicker={calculators.title}
      headline={
        find === ''
          ? say(text.headline, language, { count: found.length })
          : found.length === 0
            ? say(text.foundNone, language, { find })
            : say(text.found, language, { count: found.length, find })
      }
      margin={{
        label: text.about,
        entries: [
          ...(subjects.length > 1
            ? [{ term: text.subjects, detail: <SubjectLinks found={found} subjects={subjects} /> }]
            : []),
          { term: text.whatFor, detail: text.whatForText },
          { term: text.share, detail: text.shareText },
        ],
      }}
    >
      <FindForm find={find} text={text} />
      {found.length === 0 ? (
        <Section id="none" title={text.find}>
          <EmptyState sentence={text.foundNoneText} />
        </Section>
      ) : null}
      {subjects.map((subject) => {
        const own = found.filter(({ id }) => id.startsWith(`${subject}/`))
        const title = own[0]?.subject ?? subject
        return (
          <Section key={subject} id={subject} title={title}>
            <SheetTable
              caption={title}
              captionHidden
              columns={[
                { key: 'name', label: text.name },
                { key: 'gives', label: text.gives },
              ]}
            >
              {own.map(({ id, title: name, gives }) => (
                <tr key={id}>
                  <Cell head>
                    <PageLink href={`/calculators/${id}`}>{name}</PageLink>
                  </Cell>
                  <Cell>{listOf(gives, language)}</Cell>
                </tr>
              ))}
            </SheetTable>
          </Section>
        )
      })}
      <ActionRow>
        <LinkButton tone="plain" href="/calculators/reference">
          {text.toReference}
        </LinkButton>
        {find === '' ? null : (
          <LinkButton tone="plain" href="/calculators">
            {text.all}
          </LinkButton>
        )}
      </ActionRow>
    </Sheet>
  )
}

/** The subjects that are on the page, to go straight to one. */
function SubjectLinks({
  found,
  subjects,
}: {
  found: readonly { id: string; subject: string }[]
  subjects: readonly string[]
}) {
  return (
    <ul>
      {subjects.map((subject) => (
        <li key={subject} className="py-0.5">
          <a href={`#${subject}`}>{found.find(({ id }) => id.startsWith(`${subject}/`))?.subject ?? subject}</a>
        </li>
      ))}
    </ul>
  )
}
